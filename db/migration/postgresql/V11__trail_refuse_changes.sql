create function trail_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'the record is append-only: % on % is refused', tg_op, tg_table_name
        using errcode = 'integrity_constraint_violation';
end
$$;

create trigger trail_entries_no_change before update or delete on trail_entries
    for each row execute function trail_refuse_change();

create trigger trail_entries_no_truncate before truncate on trail_entries
    for each statement execute function trail_refuse_change();

create function trail_refuse_step_back() returns trigger language plpgsql as $$
begin
    if new.lab is distinct from old.lab or new.sequence is null or new.sequence <= coalesce(old.sequence, 0) then
        raise exception 'the record is append-only: its head only moves forward'
            using errcode = 'integrity_constraint_violation';
    end if;
    return new;
end
$$;

create trigger trail_heads_forward_only before update on trail_heads
    for each row execute function trail_refuse_step_back();

create trigger trail_heads_no_delete before delete on trail_heads
    for each row execute function trail_refuse_change();

create trigger trail_heads_no_truncate before truncate on trail_heads
    for each statement execute function trail_refuse_change();
