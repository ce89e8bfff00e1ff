-- one row per change of a rule; the highest number of a code is in force, and the program's default while there is none
create table report_exception_rules (
    lab_id uuid not null,
    code varchar(40) not null,
    number integer not null,
    active boolean not null,
    threshold integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint report_exception_rules_pk primary key (lab_id, code, number),
    constraint report_exception_rules_lab_fk foreign key (lab_id) references labs (id),
    constraint report_exception_rules_threshold_ck check (threshold between 0 and 10000),
    constraint report_exception_rules_reason_ck check (reason <> '')
);
