-- bytes may be replaced by a note at the end of their time: only while the same transaction holds the line that says so
create function program_refuse_unless_taken_out() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if new.id = old.id and new.sha256 = old.sha256 and old.taken_out_at is null and new.taken_out_at is not null
            and exists (
                select 1 from retention_items i
                where i.record_id = old.id and i.kind = 'PROGRAMS' and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;

drop trigger program_contents_immutable on program_contents;

create trigger program_contents_taken_out_only before update or delete on program_contents
    for each row execute function program_refuse_unless_taken_out();
