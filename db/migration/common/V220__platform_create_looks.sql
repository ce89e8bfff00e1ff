-- who looked at whose record, once for each person, record and hour
create table platform_looks (
    id uuid not null,
    lab_id uuid not null,
    viewer uuid not null,
    -- a person's id; empty for a list of many, a hyphen for a thing that names nobody
    whose varchar(36) not null,
    sight varchar(30) not null,
    subject varchar(80) not null,
    hour_at timestamp with time zone not null,
    seen_at timestamp with time zone not null,
    constraint platform_looks_pk primary key (id),
    constraint platform_looks_lab_fk foreign key (lab_id) references labs (id),
    constraint platform_looks_once_uq unique (viewer, whose, sight, subject, hour_at),
    constraint platform_looks_not_own_ck check (whose <> cast(viewer as varchar(36)))
);

create index platform_looks_whose_ix on platform_looks (whose, seen_at);

create index platform_looks_seen_ix on platform_looks (lab_id, seen_at);
