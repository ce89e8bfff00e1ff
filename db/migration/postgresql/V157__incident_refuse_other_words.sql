-- forms and statements are never changed; they go with the words of their incident at the end of its time
create function incident_keep_words() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' and exists (
        select 1 from retention_items i
        where i.record_id = old.incident_id and i.kind = 'INCIDENTS' and i.state = 'DONE'
        and i.transaction_mark = transaction_id()
    ) then
        return old;
    end if;
    raise exception 'rows of % are never changed, and deleted only by a disposal that is written down', tg_table_name
        using errcode = '23514';
end $$;

create trigger incident_forms_disposed_only before update or delete on incident_forms
    for each row execute function incident_keep_words();

create trigger incident_statements_disposed_only before update or delete on incident_statements
    for each row execute function incident_keep_words();

-- what was reported, when, and by whom stays as it was told, until its time is over
create function incident_keep_reporters_words() returns trigger language plpgsql as $$
begin
    if (new.happened_at, new.reported_at, new.reporter_part, new.number, new.cell_id)
        is distinct from (old.happened_at, old.reported_at, old.reporter_part, old.number, old.cell_id)
        or ((new.sentence, new.reporter, new.receipt_sha256) is distinct from (old.sentence, old.reporter, old.receipt_sha256)
            and not exists (
                select 1 from retention_items i
                where i.record_id = old.id and i.kind = 'INCIDENTS' and i.state = 'DONE'
                and i.transaction_mark = transaction_id())) then
        raise exception 'the words of a report are never changed' using errcode = '23514';
    end if;
    return new;
end $$;

create trigger incidents_keep_reporters_words before update on incidents
    for each row execute function incident_keep_reporters_words();
