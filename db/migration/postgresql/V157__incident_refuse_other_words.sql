create trigger incident_forms_immutable before update or delete on incident_forms
    for each row execute function incident_refuse_change();

create trigger incident_statements_immutable before update or delete on incident_statements
    for each row execute function incident_refuse_change();

-- what was reported, when, and by whom stays as it was told
create function incident_keep_reporters_words() returns trigger language plpgsql as $$
begin
    if (new.sentence, new.happened_at, new.reported_at, new.reporter, new.reporter_part, new.receipt_sha256, new.number,
            new.cell_id)
        is distinct from (old.sentence, old.happened_at, old.reported_at, old.reporter, old.reporter_part,
            old.receipt_sha256, old.number, old.cell_id) then
        raise exception 'the words of a report are never changed' using errcode = '23514';
    end if;
    return new;
end $$;

create trigger incidents_keep_reporters_words before update on incidents
    for each row execute function incident_keep_reporters_words();
