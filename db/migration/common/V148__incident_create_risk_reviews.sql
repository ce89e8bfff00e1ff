create table incident_risk_reviews (
    id uuid not null,
    incident_id uuid not null,
    reviewed_on date not null,
    outcome varchar(1000) not null,
    cell_version integer,
    noted_by uuid not null,
    noted_at timestamp with time zone not null,
    constraint incident_risk_reviews_pk primary key (id),
    constraint incident_risk_reviews_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_risk_reviews_outcome_ck check (outcome <> '')
);
