-- one row for each thing that somebody is told; the row is the outbox of its e-mail as well
create table messages (
    id uuid not null,
    lab_id uuid not null,
    person_id uuid not null,
    kind varchar(40) not null,
    subject varchar(200) not null,
    body varchar(4000) not null,
    href varchar(400) not null,
    -- what must be told once only, whoever tells it; null when that does not matter
    once_key varchar(120),
    created_at timestamp with time zone not null,
    read_at timestamp with time zone,
    mail_state varchar(20) not null,
    mail_until timestamp with time zone not null,
    attempts integer not null,
    next_try_at timestamp with time zone not null,
    claimed_by varchar(60),
    claimed_until timestamp with time zone,
    sent_at timestamp with time zone,
    last_error varchar(400),
    constraint messages_pk primary key (id),
    constraint messages_lab_fk foreign key (lab_id) references labs (id),
    constraint messages_once_uq unique (once_key),
    constraint messages_attempts_ck check (attempts >= 0),
    constraint messages_claim_ck check ((claimed_by is null) = (claimed_until is null)),
    constraint messages_mail_state_ck check (mail_state in ('OFF', 'WAITING', 'SENT', 'REFUSED', 'TOO_LATE'))
);

create index messages_mail_ix on messages (mail_state, next_try_at);
create index messages_person_ix on messages (person_id, created_at);
