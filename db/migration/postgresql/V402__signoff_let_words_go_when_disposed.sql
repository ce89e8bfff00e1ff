-- a waiver is given once and used once; reasons and remarks may be taken out at the end of their time, in the transaction
-- that says so; arguments: the kind of record, the column with its id, the column of words, columns filled in once
create function signoff_refuse_unless_words_out() returns trigger language plpgsql as $$
declare
    was jsonb := to_jsonb(old);
    wanted jsonb;
    later text[] := string_to_array(coalesce(tg_argv[3], ''), ' ');
begin
    if tg_op = 'UPDATE' then
        wanted := to_jsonb(new);
        if cardinality(later) > 0 and wanted - later = was - later
            and not exists (select 1 from unnest(later) c where was ->> c is not null) then
            return new;
        end if;
        if wanted - array[tg_argv[2], 'words_out_at'] = was - array[tg_argv[2], 'words_out_at']
            and old.words_out_at is null and new.words_out_at is not null
            and exists (
                select 1 from retention_items i
                where i.record_id = cast(was ->> tg_argv[1] as uuid) and i.kind = tg_argv[0] and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;

create trigger signoff_waivers_words_out_only before update or delete on signoff_waivers
    for each row execute function signoff_refuse_unless_words_out('WAIVERS', 'id', 'reason', 'used_at release_id');

create trigger signoff_waivers_taken_back_words_out_only before update or delete on signoff_waivers_taken_back
    for each row execute function signoff_refuse_unless_words_out('WAIVERS', 'waiver_id', 'reason');

drop trigger signoff_paper_cards_immutable on signoff_paper_cards;

create trigger signoff_paper_cards_words_out_only before update or delete on signoff_paper_cards
    for each row execute function signoff_refuse_unless_words_out('PAPER_REMARKS', 'id', 'happened');
