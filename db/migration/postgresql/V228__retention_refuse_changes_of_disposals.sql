create function retention_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger retention_disposals_immutable before update or delete on retention_disposals
    for each row execute function retention_refuse_change();

create trigger retention_rules_immutable before update or delete on retention_rules
    for each row execute function retention_refuse_change();

create trigger retention_items_stay before delete on retention_items
    for each row execute function retention_refuse_change();

create trigger retention_holds_stay before delete on retention_holds
    for each row execute function retention_refuse_change();

-- the name of the running transaction, as H2 has it under the same name
create function transaction_id() returns varchar language sql volatile as $$
    select cast(pg_current_xact_id() as varchar)
$$;
