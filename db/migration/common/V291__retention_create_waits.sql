-- days between the approval of a list and its carrying out, a row per change; the program's own while there is none
create table retention_waits (
    lab_id uuid not null,
    number integer not null,
    days integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint retention_waits_pk primary key (lab_id, number),
    constraint retention_waits_lab_fk foreign key (lab_id) references labs (id),
    constraint retention_waits_days_ck check (days between 1 and 60),
    constraint retention_waits_reason_ck check (reason <> '')
);
