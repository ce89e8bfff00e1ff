-- a hold is lifted once and is otherwise never changed: not what is held, not by which lab, not by whom
create function retention_refuse_unless_lifted() returns trigger language plpgsql as $$
begin
    if old.lifted_at is not null or new.lifted_at is null
        or (new.id, new.lab_id, new.about, new.subject, new.kind, new.from_day, new.until_day, new.reason, new.authority,
            new.placed_by, new.placed_at)
        is distinct from (old.id, old.lab_id, old.about, old.subject, old.kind, old.from_day, old.until_day, old.reason,
            old.authority, old.placed_by, old.placed_at) then
        raise exception 'rows of % are lifted once and otherwise never changed', tg_table_name using errcode = '23514';
    end if;
    return new;
end $$;

create trigger retention_holds_lifted_only before update on retention_holds
    for each row execute function retention_refuse_unless_lifted();
