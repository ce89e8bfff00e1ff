create function signoff_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger signoff_preparations_immutable before update or delete on signoff_preparations
    for each row execute function signoff_refuse_change();

create trigger signoff_signatures_immutable before update or delete on signoff_signatures
    for each row execute function signoff_refuse_change();

create trigger signoff_answers_immutable before update or delete on signoff_answers
    for each row execute function signoff_refuse_change();

create trigger signoff_lapses_immutable before update or delete on signoff_lapses
    for each row execute function signoff_refuse_change();

create trigger signoff_disagreements_immutable before update or delete on signoff_disagreements
    for each row execute function signoff_refuse_change();

create trigger signoff_sheets_stay before delete on signoff_sheets
    for each row execute function signoff_refuse_change();

create trigger signoff_releases_stay before delete on signoff_releases
    for each row execute function signoff_refuse_change();
