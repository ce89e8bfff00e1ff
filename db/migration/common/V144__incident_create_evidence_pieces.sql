create table incident_evidence_pieces (
    evidence_id uuid not null,
    number integer not null,
    kind varchar(30) not null,
    reference varchar(80) not null,
    words varchar(300) not null,
    sha256 varchar(64) not null,
    constraint incident_evidence_pieces_pk primary key (evidence_id, number),
    constraint incident_evidence_pieces_evidence_fk foreign key (evidence_id) references incident_evidence (id),
    constraint incident_evidence_pieces_sha256_ck check (length(sha256) = 64)
);
