-- who opened a medical part is kept as long as the notes in it
drop trigger incident_medical_views_immutable;

create trigger incident_medical_views_disposed_only before update, delete on incident_medical_views
    for each row call 'org.standclear.platform.database.DisposedOnly';
