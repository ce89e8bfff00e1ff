-- a tag is hung once and lifted once; its reasons may be taken out at the end of their time, in the transaction that says so
create function cell_refuse_unless_lifted_or_words_out() returns trigger language plpgsql as $$
begin
    if to_jsonb(new) - array['lifted_by', 'lifted_at', 'lift_reason']
        = to_jsonb(old) - array['lifted_by', 'lifted_at', 'lift_reason'] and old.lifted_at is null then
        return new;
    end if;
    if to_jsonb(new) - array['reason', 'lift_reason', 'words_out_at']
        = to_jsonb(old) - array['reason', 'lift_reason', 'words_out_at']
        and old.words_out_at is null and new.words_out_at is not null
        and exists (
            select 1 from retention_items i
            where i.record_id = old.id and i.kind = 'TAG_REASONS' and i.state = 'DONE'
                and i.transaction_mark = transaction_id()
        ) then
        return new;
    end if;
    raise exception 'rows of % are lifted once and otherwise never changed but by a disposal that is written down',
        tg_table_name using errcode = '23514';
end $$;

create trigger cell_tags_words_out_only before update on cell_tags
    for each row execute function cell_refuse_unless_lifted_or_words_out();
