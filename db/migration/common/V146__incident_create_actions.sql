create table incident_actions (
    id uuid not null,
    incident_id uuid not null,
    words varchar(500) not null,
    control_level varchar(30) not null,
    owner uuid not null,
    due_on date not null,
    added_by uuid not null,
    added_at timestamp with time zone not null,
    done_by uuid,
    done_at timestamp with time zone,
    done_words varchar(1000),
    check_due_on date,
    checked_by uuid,
    checked_at timestamp with time zone,
    effective boolean,
    check_words varchar(1000),
    constraint incident_actions_pk primary key (id),
    constraint incident_actions_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_actions_level_ck check (control_level in ('ELIMINATION', 'SUBSTITUTION', 'ENGINEERING',
        'ADMINISTRATIVE', 'PROTECTIVE_EQUIPMENT')),
    constraint incident_actions_done_ck check ((done_by is null) = (done_at is null)
        and (done_by is null) = (check_due_on is null) and (done_by is null) = (done_words is null)),
    constraint incident_actions_checked_ck check ((checked_by is null) = (checked_at is null)
        and (checked_by is null) = (effective is null) and (checked_by is null or done_by is not null)),
    constraint incident_actions_not_own_check_ck check (checked_by is null or checked_by <> owner)
);

create index incident_actions_incident_ix on incident_actions (incident_id, added_at);
create index incident_actions_owner_ix on incident_actions (owner, due_on);
