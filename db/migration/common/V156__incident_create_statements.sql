-- what somebody who had a part in an incident says about it, in their own words; never changed
create table incident_statements (
    id uuid not null,
    incident_id uuid not null,
    person_id uuid not null,
    words varchar(7000) not null,
    stated_at timestamp with time zone not null,
    constraint incident_statements_pk primary key (id),
    constraint incident_statements_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_statements_words_ck check (words <> '')
);

create index incident_statements_incident_ix on incident_statements (incident_id, stated_at);
