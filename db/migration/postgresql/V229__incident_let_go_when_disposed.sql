-- these two may lose rows at the end of their time: only while the same transaction holds the line that says so
create function incident_refuse_unless_disposed() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' and exists (
        select 1 from retention_items i
        where i.record_id = old.id and i.kind = tg_argv[0] and i.state = 'DONE' and i.transaction_mark = transaction_id()
    ) then
        return old;
    end if;
    raise exception 'rows of % are never changed, and deleted only by a disposal that is written down', tg_table_name
        using errcode = '23514';
end $$;

drop trigger incident_medical_notes_immutable on incident_medical_notes;

drop trigger incident_photos_immutable on incident_photos;

create trigger incident_medical_notes_disposed_only before update or delete on incident_medical_notes
    for each row execute function incident_refuse_unless_disposed('MEDICAL_NOTES');

create trigger incident_photos_disposed_only before update or delete on incident_photos
    for each row execute function incident_refuse_unless_disposed('PHOTOS');
