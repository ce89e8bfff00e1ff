create table phrasebook_versions (
    id uuid not null,
    cell_id uuid not null,
    number integer not null,
    name varchar(200) not null,
    book text not null,
    sha256 varchar(64) not null,
    reason varchar(1000) not null,
    author uuid not null,
    kept_at timestamp with time zone not null,
    constraint phrasebook_versions_pk primary key (id),
    constraint phrasebook_versions_cell_fk foreign key (cell_id) references cells (id),
    constraint phrasebook_versions_author_fk foreign key (author) references people (id),
    constraint phrasebook_versions_number_uq unique (cell_id, number),
    constraint phrasebook_versions_number_ck check (number > 0)
);
