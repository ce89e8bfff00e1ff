create table set_up_codes (
    code_sha256 varchar(64) not null,
    made_at timestamp with time zone not null,
    constraint set_up_codes_pk primary key (code_sha256)
);

-- one row at most: whoever inserts it has set the lab up, and nobody can again
create table set_up_done (
    id integer not null,
    person_id uuid not null,
    done_at timestamp with time zone not null,
    constraint set_up_done_pk primary key (id),
    constraint set_up_done_once_ck check (id = 1),
    constraint set_up_done_person_fk foreign key (person_id) references people (id)
);
