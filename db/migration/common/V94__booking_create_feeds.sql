-- a calendar that a program reads by a secret address; only the secret's SHA-256 is kept
create table booking_feeds (
    id uuid not null,
    lab_id uuid not null,
    kind varchar(10) not null,
    -- whose or which; null for the whole lab
    subject uuid,
    secret_sha256 varchar(64) not null,
    owner_id uuid not null,
    made_at timestamp with time zone not null,
    revoked_at timestamp with time zone,
    constraint booking_feeds_pk primary key (id),
    constraint booking_feeds_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_feeds_secret_uq unique (secret_sha256),
    constraint booking_feeds_kind_ck check (kind in ('PERSON', 'CELL', 'LAB')),
    constraint booking_feeds_subject_ck check ((kind = 'LAB') = (subject is null))
);

create index booking_feeds_owner_ix on booking_feeds (owner_id, made_at);
