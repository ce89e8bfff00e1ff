-- forms and statements are never changed; they go with the words of their incident at the end of its time
create trigger incident_forms_disposed_only before update, delete on incident_forms
    for each row call 'org.standclear.incident.records.KeepWords';

create trigger incident_statements_disposed_only before update, delete on incident_statements
    for each row call 'org.standclear.incident.records.KeepWords';

-- what was reported, when, and by whom stays as it was told, until its time is over
create trigger incidents_keep_reporters_words before update on incidents
    for each row call 'org.standclear.incident.records.KeepWords';
