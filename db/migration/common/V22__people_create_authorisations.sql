create table authorisations (
    id uuid not null,
    person_id uuid not null,
    duty varchar(20) not null,
    cell_id uuid,
    valid_from timestamp with time zone not null,
    valid_until timestamp with time zone not null,
    granted_by uuid not null,
    granted_at timestamp with time zone not null,
    reason varchar(400) not null,
    revoked_by uuid,
    revoked_at timestamp with time zone,
    revoke_reason varchar(400),
    constraint authorisations_pk primary key (id),
    constraint authorisations_person_fk foreign key (person_id) references people (id),
    constraint authorisations_granter_fk foreign key (granted_by) references people (id),
    constraint authorisations_revoker_fk foreign key (revoked_by) references people (id),
    constraint authorisations_duty_ck check (duty in ('OPERATOR', 'ATTENDANT')),
    constraint authorisations_span_ck check (valid_from < valid_until),
    constraint authorisations_reason_ck check (reason <> ''),
    constraint authorisations_revoked_ck check (
        (revoked_at is null and revoked_by is null and revoke_reason is null)
        or (revoked_at is not null and revoked_by is not null and revoke_reason <> ''))
);

create index authorisations_person_ix on authorisations (person_id, duty, valid_until);
create index authorisations_duty_ix on authorisations (duty, valid_until);
