create table duty_periods (
    id uuid not null,
    person_id uuid not null,
    from_at timestamp with time zone not null,
    until_at timestamp with time zone not null,
    planned_by uuid,
    planned_at timestamp with time zone not null,
    removed_by uuid,
    removed_at timestamp with time zone,
    constraint duty_periods_pk primary key (id),
    constraint duty_periods_person_fk foreign key (person_id) references people (id),
    constraint duty_periods_span_ck check (from_at < until_at),
    constraint duty_periods_removed_ck check ((removed_by is null) = (removed_at is null))
);

create index duty_periods_until_ix on duty_periods (until_at, from_at);
create index duty_periods_person_ix on duty_periods (person_id, until_at);
