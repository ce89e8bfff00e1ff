create function incident_refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed or deleted', tg_table_name using errcode = '23514';
end $$;

create trigger incident_steps_immutable before update or delete on incident_steps
    for each row execute function incident_refuse_change();

create trigger incident_evidence_immutable before update or delete on incident_evidence
    for each row execute function incident_refuse_change();

create trigger incident_evidence_pieces_immutable before update or delete on incident_evidence_pieces
    for each row execute function incident_refuse_change();

create trigger incident_restarts_immutable before update or delete on incident_restarts
    for each row execute function incident_refuse_change();

create trigger incident_risk_reviews_immutable before update or delete on incident_risk_reviews
    for each row execute function incident_refuse_change();

create trigger incident_medical_notes_immutable before update or delete on incident_medical_notes
    for each row execute function incident_refuse_change();

create trigger incident_medical_views_immutable before update or delete on incident_medical_views
    for each row execute function incident_refuse_change();

create trigger incident_photos_immutable before update or delete on incident_photos
    for each row execute function incident_refuse_change();

create trigger incidents_stay before delete on incidents
    for each row execute function incident_refuse_change();

create trigger incident_people_stay before delete on incident_people
    for each row execute function incident_refuse_change();

create trigger incident_causes_stay before delete on incident_causes
    for each row execute function incident_refuse_change();

create trigger incident_actions_stay before delete on incident_actions
    for each row execute function incident_refuse_change();
