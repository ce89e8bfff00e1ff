create table cell_proposals (
    id uuid not null,
    lab_id uuid not null,
    cell_id uuid,
    cell_name varchar(60) not null,
    number integer not null,
    start_offset_minutes integer not null,
    file text not null,
    sha256 varchar(64) not null,
    reason varchar(1000) not null,
    proposed_by uuid not null,
    proposed_at timestamp with time zone not null,
    state varchar(10) not null,
    decided_by uuid,
    decided_at timestamp with time zone,
    decision_reason varchar(1000),
    constraint cell_proposals_pk primary key (id),
    constraint cell_proposals_lab_fk foreign key (lab_id) references labs (id),
    constraint cell_proposals_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_proposals_state_ck check (state in ('OPEN', 'APPROVED', 'REJECTED')),
    constraint cell_proposals_number_ck check (number > 0),
    constraint cell_proposals_decided_ck check ((state = 'OPEN') = (decided_by is null)),
    constraint cell_proposals_two_people_ck check (state <> 'APPROVED' or decided_by <> proposed_by)
);

create index cell_proposals_cell_ix on cell_proposals (cell_id, state);
