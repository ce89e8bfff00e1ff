create function report_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger report_exception_readings_immutable before update or delete on report_exception_readings
    for each row execute function report_refuse_change();
