create table incident_people (
    incident_id uuid not null,
    person_id uuid not null,
    part varchar(60) not null,
    added_at timestamp with time zone not null,
    constraint incident_people_pk primary key (incident_id, person_id),
    constraint incident_people_incident_fk foreign key (incident_id) references incidents (id)
);
