-- which criterion a run is evidence for, who says so, and who confirmed it
create table run_evidence (
    run_id uuid not null,
    criterion_id uuid not null,
    linked_by uuid not null,
    linked_at timestamp with time zone not null,
    confirmed_by uuid,
    confirmed_at timestamp with time zone,
    constraint run_evidence_pk primary key (run_id, criterion_id),
    constraint run_evidence_run_fk foreign key (run_id) references runs (id),
    constraint run_evidence_criterion_fk foreign key (criterion_id) references assignment_criteria (id),
    constraint run_evidence_confirmed_ck check ((confirmed_by is null) = (confirmed_at is null))
);

create index run_evidence_criterion_ix on run_evidence (criterion_id);
