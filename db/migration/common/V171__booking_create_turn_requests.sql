-- who asks for how many turns in a window; none, for people who only stand at e-stops
create table booking_turn_requests (
    id uuid not null,
    window_id uuid not null,
    operator_id uuid not null,
    partner_id uuid,
    assignment_id uuid,
    tool varchar(40) not null,
    turns integer not null,
    attends boolean not null,
    make_up boolean not null,
    asked_at timestamp with time zone not null,
    constraint booking_turn_requests_pk primary key (id),
    constraint booking_turn_requests_window_fk foreign key (window_id) references booking_windows (id),
    constraint booking_turn_requests_once_uq unique (window_id, operator_id),
    constraint booking_turn_requests_partner_ck check (partner_id is null or partner_id <> operator_id),
    constraint booking_turn_requests_turns_ck check (turns between 0 and 12)
);
