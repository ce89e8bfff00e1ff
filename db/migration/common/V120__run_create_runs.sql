create table runs (
    id uuid not null,
    booking_id uuid not null,
    cell_id uuid not null,
    cell_version integer not null,
    revision_id uuid not null,
    state varchar(12) not null,
    started_at timestamp with time zone not null,
    lab_date date not null,
    ended_at timestamp with time zone,
    closed_out_at timestamp with time zone,
    passes integer not null,
    stops integer not null,
    version integer not null,
    constraint runs_pk primary key (id),
    constraint runs_booking_uq unique (booking_id),
    constraint runs_state_ck check (state in ('RUNNING', 'STOPPED', 'FINISHED', 'CLOSED_OUT')),
    constraint runs_counts_ck check (passes >= 0 and stops >= 0),
    constraint runs_closed_out_ck check ((state = 'CLOSED_OUT') = (closed_out_at is not null))
);

create index runs_started_ix on runs (started_at, id);
create index runs_cell_ix on runs (cell_id, started_at, id);
create index runs_date_ix on runs (lab_date, started_at, id);
create index runs_open_ix on runs (state, started_at);

create table run_people (
    run_id uuid not null,
    person_id uuid not null,
    part varchar(10) not null,
    started_at timestamp with time zone not null,
    constraint run_people_pk primary key (run_id, person_id, part),
    constraint run_people_run_fk foreign key (run_id) references runs (id),
    constraint run_people_part_ck check (part in ('operator', 'attendant', 'releaser'))
);

create index run_people_person_ix on run_people (person_id, started_at, run_id);
