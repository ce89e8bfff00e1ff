create table personal_tokens (
    id uuid not null,
    person_id uuid not null,
    name varchar(60) not null,
    -- the readable beginning, by which a token is looked up; the rest is kept only as its SHA-256
    prefix varchar(10) not null,
    secret_sha256 varchar(64) not null,
    created_at timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    last_used_at timestamp with time zone,
    revoked_at timestamp with time zone,
    constraint personal_tokens_pk primary key (id),
    constraint personal_tokens_person_fk foreign key (person_id) references people (id),
    constraint personal_tokens_prefix_uq unique (prefix),
    constraint personal_tokens_expiry_ck check (created_at < expires_at)
);

create index personal_tokens_person_ix on personal_tokens (person_id, created_at);
