-- a signed line stays; the remark beside it may be taken out at the end of its time, in the transaction that says so
create function report_refuse_unless_remark_out() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if to_jsonb(new) - array['remark', 'words_out_at'] = to_jsonb(old) - array['remark', 'words_out_at']
            and old.words_out_at is null and new.words_out_at is not null
            and exists (
                select 1 from retention_items i
                where i.record_id = old.id and i.kind = 'EXCEPTION_REMARKS' and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;

drop trigger report_exception_readings_immutable on report_exception_readings;

create trigger report_exception_readings_words_out_only before update or delete on report_exception_readings
    for each row execute function report_refuse_unless_remark_out();
