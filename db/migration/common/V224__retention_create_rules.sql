-- one row per change of a rule; the highest number of a kind is in force, and the program's default while there is none
create table retention_rules (
    lab_id uuid not null,
    kind varchar(30) not null,
    number integer not null,
    -- ISO 8601; null: kept for good
    period varchar(12),
    from_year_end boolean not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint retention_rules_pk primary key (lab_id, kind, number),
    constraint retention_rules_lab_fk foreign key (lab_id) references labs (id),
    constraint retention_rules_reason_ck check (reason <> ''),
    constraint retention_rules_period_ck check (period is null or period like 'P_%')
);
