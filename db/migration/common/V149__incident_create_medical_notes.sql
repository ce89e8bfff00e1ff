create table incident_medical_notes (
    id uuid not null,
    incident_id uuid not null,
    words varchar(2000) not null,
    written_by uuid not null,
    written_at timestamp with time zone not null,
    constraint incident_medical_notes_pk primary key (id),
    constraint incident_medical_notes_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_medical_notes_words_ck check (words <> '')
);
