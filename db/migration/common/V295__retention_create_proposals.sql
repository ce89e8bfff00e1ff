-- a shorter time, proposed by one person; it is put in force when a second one approves it
create table retention_proposals (
    id uuid not null,
    lab_id uuid not null,
    kind varchar(30) not null,
    -- the rule that it would follow; when another one is in force meanwhile the proposal is past
    seen_number integer not null,
    period varchar(12) not null,
    from_year_end boolean not null,
    reason varchar(400) not null,
    proposed_by uuid not null,
    proposed_at timestamp with time zone not null,
    state varchar(10) not null,
    decided_by uuid,
    decided_at timestamp with time zone,
    decision_reason varchar(400),
    constraint retention_proposals_pk primary key (id),
    constraint retention_proposals_lab_fk foreign key (lab_id) references labs (id),
    constraint retention_proposals_reason_ck check (reason <> ''),
    constraint retention_proposals_period_ck check (period like 'P_%'),
    constraint retention_proposals_state_ck check (state in ('OPEN', 'APPROVED', 'REJECTED')),
    constraint retention_proposals_decided_ck check (
        (state = 'OPEN') = (decided_by is null) and (decided_by is null) = (decided_at is null)
        and (decided_by is null) = (decision_reason is null)),
    constraint retention_proposals_two_people_ck check (state <> 'APPROVED' or decided_by <> proposed_by)
);

create index retention_proposals_kind_ix on retention_proposals (lab_id, kind, state);
