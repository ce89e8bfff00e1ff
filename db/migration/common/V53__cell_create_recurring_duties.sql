-- what comes round on a cell: how often, and when it was done; rows are only ever added
create table cell_duty_intervals (
    cell_id uuid not null,
    duty varchar(20) not null,
    number integer not null,
    interval_days integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint cell_duty_intervals_pk primary key (cell_id, duty, number),
    constraint cell_duty_intervals_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_duty_intervals_duty_ck check (duty in ('INSPECTION', 'RISK_ASSESSMENT')),
    constraint cell_duty_intervals_days_ck check (interval_days between 1 and 3660),
    constraint cell_duty_intervals_reason_ck check (reason <> '')
);

create table cell_duties_done (
    id uuid not null,
    cell_id uuid not null,
    duty varchar(20) not null,
    done_on date not null,
    done_by varchar(200) not null,
    found varchar(1000) not null,
    cell_version integer not null,
    recorded_by uuid not null,
    recorded_at timestamp with time zone not null,
    constraint cell_duties_done_pk primary key (id),
    constraint cell_duties_done_version_fk foreign key (cell_id, cell_version)
        references cell_versions (cell_id, number),
    constraint cell_duties_done_duty_ck check (duty in ('INSPECTION', 'RISK_ASSESSMENT')),
    constraint cell_duties_done_words_ck check (done_by <> '' and found <> '')
);

create index cell_duties_done_cell_ix on cell_duties_done (cell_id, duty, done_on);
