create table cells (
    id uuid not null,
    lab_id uuid not null,
    name varchar(60) not null,
    state varchar(20) not null,
    state_reason varchar(4000) not null,
    current_version integer not null,
    start_offset_minutes integer not null,
    constraint cells_pk primary key (id),
    constraint cells_lab_fk foreign key (lab_id) references labs (id),
    constraint cells_name_uq unique (lab_id, name),
    constraint cells_state_ck check (state in ('IN_SERVICE', 'RESTRICTED', 'HELD', 'OUT_OF_SERVICE')),
    constraint cells_reason_ck check (state = 'IN_SERVICE' or state_reason <> ''),
    constraint cells_version_ck check (current_version > 0),
    constraint cells_offset_ck check (start_offset_minutes between 0 and 59)
);
