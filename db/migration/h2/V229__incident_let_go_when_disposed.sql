-- these two may lose rows at the end of their time: only while the same transaction holds the line that says so
drop trigger incident_medical_notes_immutable;

drop trigger incident_photos_immutable;

create trigger incident_medical_notes_disposed_only before update, delete on incident_medical_notes
    for each row call 'org.standclear.platform.database.DisposedOnly';

create trigger incident_photos_disposed_only before update, delete on incident_photos
    for each row call 'org.standclear.platform.database.DisposedOnly';
