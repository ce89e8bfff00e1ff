create trigger incident_steps_immutable before update, delete on incident_steps
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_evidence_immutable before update, delete on incident_evidence
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_evidence_pieces_immutable before update, delete on incident_evidence_pieces
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_restarts_immutable before update, delete on incident_restarts
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_risk_reviews_immutable before update, delete on incident_risk_reviews
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_medical_notes_immutable before update, delete on incident_medical_notes
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_medical_views_immutable before update, delete on incident_medical_views
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_photos_immutable before update, delete on incident_photos
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incidents_stay before delete on incidents
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_people_stay before delete on incident_people
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_causes_stay before delete on incident_causes
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger incident_actions_stay before delete on incident_actions
    for each row call 'org.standclear.platform.database.RefuseChange';
