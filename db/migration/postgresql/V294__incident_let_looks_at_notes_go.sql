-- who opened a medical part is kept as long as the notes in it
drop trigger incident_medical_views_immutable on incident_medical_views;

create trigger incident_medical_views_disposed_only before update or delete on incident_medical_views
    for each row execute function incident_refuse_unless_disposed('MEDICAL_VIEWS');
