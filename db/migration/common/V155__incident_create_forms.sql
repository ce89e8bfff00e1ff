-- every state that an incident's form and classification had, first to last; the incident itself holds the last one
create table incident_forms (
    id uuid not null,
    incident_id uuid not null,
    number integer not null,
    class varchar(30) not null,
    story varchar(4000) not null,
    done_at_once varchar(2000) not null,
    actual varchar(30) not null,
    foreseeable varchar(30) not null,
    outcomes varchar(400) not null,
    -- null for a form from before its history was kept
    filled_by uuid,
    filled_at timestamp with time zone not null,
    constraint incident_forms_pk primary key (id),
    constraint incident_forms_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_forms_number_uq unique (incident_id, number),
    constraint incident_forms_number_ck check (number > 0)
);

insert into incident_forms (id, incident_id, number, class, story, done_at_once, actual, foreseeable, outcomes, filled_at)
    select id, id, 1, class, story, done_at_once, actual, foreseeable, outcomes, coalesce(form_done_at, reported_at)
    from incidents where actual is not null and foreseeable is not null;
