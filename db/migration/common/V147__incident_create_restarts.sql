create table incident_restarts (
    incident_id uuid not null,
    approved_by uuid not null,
    approved_at timestamp with time zone not null,
    words varchar(1000) not null,
    constraint incident_restarts_pk primary key (incident_id, approved_at),
    constraint incident_restarts_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_restarts_words_ck check (words <> '')
);
