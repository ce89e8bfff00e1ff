create function check_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger check_answers_immutable before update or delete on check_answers
    for each row execute function check_refuse_change();
