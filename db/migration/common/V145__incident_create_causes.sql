create table incident_causes (
    id uuid not null,
    incident_id uuid not null,
    parent_id uuid,
    branch varchar(30) not null,
    words varchar(500) not null,
    added_by uuid not null,
    added_at timestamp with time zone not null,
    struck_by uuid,
    struck_at timestamp with time zone,
    constraint incident_causes_pk primary key (id),
    constraint incident_causes_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_causes_parent_fk foreign key (parent_id) references incident_causes (id),
    constraint incident_causes_branch_ck check (branch in ('PEOPLE', 'PROGRAM', 'CELL', 'ORGANISATION')),
    constraint incident_causes_struck_ck check ((struck_by is null) = (struck_at is null))
);

create index incident_causes_incident_ix on incident_causes (incident_id, added_at);
