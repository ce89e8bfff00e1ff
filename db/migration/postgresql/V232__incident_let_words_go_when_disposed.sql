-- words of a step, and who took it, may be taken out with the story of its incident, in the transaction that says so
create function incident_refuse_unless_reworded() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if new.id = old.id and new.incident_id = old.incident_id and new.kind = old.kind and new.taken_at = old.taken_at
            and exists (
                select 1 from retention_items i
                where i.record_id = old.incident_id and i.kind = 'INCIDENTS' and i.state = 'DONE'
                    and i.transaction_mark = transaction_id()
            ) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;

drop trigger incident_steps_immutable on incident_steps;

create trigger incident_steps_reworded_only before update or delete on incident_steps
    for each row execute function incident_refuse_unless_reworded();
