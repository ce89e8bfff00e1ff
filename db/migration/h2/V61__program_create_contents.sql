create table program_contents (
    id uuid not null,
    sha256 varchar(64) not null,
    bytes blob not null,
    constraint program_contents_pk primary key (id),
    constraint program_contents_sha256_ck check (length(sha256) = 64)
);
