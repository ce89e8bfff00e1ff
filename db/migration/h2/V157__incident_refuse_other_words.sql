create trigger incident_forms_immutable before update, delete on incident_forms
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_statements_immutable before update, delete on incident_statements
    for each row call 'org.standclear.platform.database.RefuseChange';

-- what was reported, when, and by whom stays as it was told
create trigger incidents_keep_reporters_words before update on incidents
    for each row call 'org.standclear.incident.records.KeepReportersWords';
