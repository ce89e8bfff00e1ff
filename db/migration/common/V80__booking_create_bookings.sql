create table bookings (
    id uuid not null,
    lab_id uuid not null,
    cell_id uuid not null,
    starts_at timestamp with time zone not null,
    ends_at timestamp with time zone not null,
    operator_id uuid not null,
    attendant_id uuid,
    course_id uuid,
    assignment_id uuid,
    revision_id uuid,
    state varchar(20) not null,
    checked_in_at timestamp with time zone,
    started_at timestamp with time zone,
    -- late release: made so shortly before the slot that no quota counts it
    outside_quota boolean not null,
    made_by uuid not null,
    made_at timestamp with time zone not null,
    version integer not null,
    constraint bookings_pk primary key (id),
    constraint bookings_lab_fk foreign key (lab_id) references labs (id),
    constraint bookings_cell_fk foreign key (cell_id) references cells (id),
    constraint bookings_span_ck check (starts_at < ends_at),
    constraint bookings_two_people_ck check (attendant_id is null or attendant_id <> operator_id),
    constraint bookings_version_ck check (version > 0),
    constraint bookings_state_ck check (state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED', 'RUNNING', 'STOPPED',
        'FINISHED', 'CLOSED_OUT', 'CANCELLED', 'LATE_CANCELLED', 'MISSED', 'MOVED_BY_STAFF'))
);

create index bookings_cell_ix on bookings (cell_id, ends_at);
create index bookings_operator_ix on bookings (operator_id, ends_at);
create index bookings_attendant_ix on bookings (attendant_id, ends_at);
create index bookings_state_ix on bookings (state, starts_at);
create index bookings_lab_ix on bookings (lab_id, ends_at);
