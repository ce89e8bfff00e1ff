create function program_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger program_contents_immutable before update or delete on program_contents
    for each row execute function program_refuse_change();

create trigger program_revisions_immutable before update or delete on program_revisions
    for each row execute function program_refuse_change();
