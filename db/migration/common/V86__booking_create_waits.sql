-- somebody waits for a slot between two instants, on one cell or on any
create table booking_waits (
    id uuid not null,
    lab_id uuid not null,
    person_id uuid not null,
    cell_id uuid,
    course_id uuid,
    assignment_id uuid,
    from_at timestamp with time zone not null,
    until_at timestamp with time zone not null,
    -- the lab took a slot away: before everybody else
    goes_first boolean not null,
    passes integer not null,
    joined_at timestamp with time zone not null,
    ended_at timestamp with time zone,
    ended_how varchar(20),
    constraint booking_waits_pk primary key (id),
    constraint booking_waits_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_waits_span_ck check (from_at < until_at),
    constraint booking_waits_passes_ck check (passes >= 0),
    constraint booking_waits_ended_ck check ((ended_at is null) = (ended_how is null)),
    constraint booking_waits_how_ck check (ended_how is null or ended_how in ('BOOKED', 'LEFT', 'PAST', 'PASSED'))
);

create index booking_waits_live_ix on booking_waits (lab_id, ended_at, until_at);
create index booking_waits_person_ix on booking_waits (person_id, ended_at);
