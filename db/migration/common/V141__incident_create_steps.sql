create table incident_steps (
    id uuid not null,
    incident_id uuid not null,
    kind varchar(40) not null,
    words varchar(2200) not null,
    for_reporter varchar(1000) not null,
    taken_by uuid,
    taken_at timestamp with time zone not null,
    constraint incident_steps_pk primary key (id),
    constraint incident_steps_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_steps_words_ck check (words <> '')
);

create index incident_steps_incident_ix on incident_steps (incident_id, taken_at, id);
