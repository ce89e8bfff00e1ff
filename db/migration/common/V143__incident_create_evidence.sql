create table incident_evidence (
    id uuid not null,
    incident_id uuid not null,
    frozen_at timestamp with time zone not null,
    because varchar(200) not null,
    pieces integer not null,
    sha256 varchar(64) not null,
    constraint incident_evidence_pk primary key (id),
    constraint incident_evidence_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_evidence_incident_uq unique (incident_id),
    constraint incident_evidence_sha256_ck check (length(sha256) = 64)
);
