create table tries (
    kind varchar(20) not null,
    -- SHA-256 of what was tried, so that a password typed into the wrong field is not kept
    subject varchar(64) not null,
    failures integer not null,
    last_at timestamp with time zone not null,
    paused_until timestamp with time zone,
    constraint tries_pk primary key (kind, subject),
    constraint tries_failures_ck check (failures >= 0)
);

create index tries_last_at_ix on tries (last_at);
