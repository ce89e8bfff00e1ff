-- when the people of a request can come, and what they wish for, the dearest first
create table booking_turn_times (
    request_id uuid not null,
    kind varchar(10) not null,
    place integer not null,
    starts_at timestamp with time zone not null,
    ends_at timestamp with time zone not null,
    constraint booking_turn_times_pk primary key (request_id, kind, place),
    constraint booking_turn_times_request_fk foreign key (request_id) references booking_turn_requests (id),
    constraint booking_turn_times_kind_ck check (kind in ('CAN', 'WISH')),
    constraint booking_turn_times_span_ck check (starts_at < ends_at)
);
