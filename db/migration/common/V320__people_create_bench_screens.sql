-- at which cell a shared bench screen stands; one without a row stands at any
create table bench_screens (
    person_id uuid not null,
    cell_id uuid not null,
    placed_by uuid not null,
    placed_at timestamp with time zone not null,
    constraint bench_screens_pk primary key (person_id),
    constraint bench_screens_person_fk foreign key (person_id) references people (id),
    constraint bench_screens_cell_fk foreign key (cell_id) references cells (id)
);
