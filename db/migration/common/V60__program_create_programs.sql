create table programs (
    id uuid not null,
    lab_id uuid not null,
    author uuid not null,
    latest_number integer not null,
    changed_at timestamp with time zone not null,
    constraint programs_pk primary key (id),
    constraint programs_lab_fk foreign key (lab_id) references labs (id),
    constraint programs_number_ck check (latest_number > 0)
);

create index programs_author_ix on programs (author, changed_at, id);
create index programs_changed_ix on programs (lab_id, changed_at, id);
