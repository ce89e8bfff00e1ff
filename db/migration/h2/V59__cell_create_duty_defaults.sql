-- how often a duty comes round on a cell that is new; the latest row of a lab and duty is in force, 0 days means none
create table cell_duty_defaults (
    lab_id uuid not null,
    duty varchar(20) not null,
    number integer not null,
    interval_days integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint cell_duty_defaults_pk primary key (lab_id, duty, number),
    constraint cell_duty_defaults_lab_fk foreign key (lab_id) references labs (id),
    constraint cell_duty_defaults_duty_ck check (duty in ('INSPECTION', 'RISK_ASSESSMENT')),
    constraint cell_duty_defaults_days_ck check (interval_days between 0 and 3660),
    constraint cell_duty_defaults_reason_ck check (reason <> '')
);

-- a new cell is looked at before it comes in force, so its duties are due one interval later
alter table cell_duty_intervals add column first_due_on date;

create trigger cell_duty_defaults_immutable before update, delete on cell_duty_defaults
    for each row call 'org.standclear.platform.database.RefuseChange';
