create function cell_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger cell_versions_immutable before update or delete on cell_versions
    for each row execute function cell_refuse_change();

create trigger cell_day_tests_immutable before update or delete on cell_day_tests
    for each row execute function cell_refuse_change();

create trigger cell_tags_stay before delete on cell_tags
    for each row execute function cell_refuse_change();
