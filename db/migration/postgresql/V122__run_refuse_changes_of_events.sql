create function run_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger run_events_immutable before update or delete on run_events
    for each row execute function run_refuse_change();

create trigger runs_stay before delete on runs
    for each row execute function run_refuse_change();

create trigger run_people_stay before delete on run_people
    for each row execute function run_refuse_change();
