-- words may be taken out at the end of their time: only while the same transaction holds the line that says so
create function run_refuse_unless_words_out() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if to_jsonb(new) - array['words', 'words_out_at'] = to_jsonb(old) - array['words', 'words_out_at']
            and old.words_out_at is null and new.words_out_at is not null
            and exists (
                select 1 from retention_items i
                where i.record_id = old.id and i.kind = 'RUN_WORDS' and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;

drop trigger run_events_immutable on run_events;

create trigger run_events_words_out_only before update or delete on run_events
    for each row execute function run_refuse_unless_words_out();
