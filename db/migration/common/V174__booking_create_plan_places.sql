-- the places of a plan; the booking is there once the plan is accepted
create table booking_plan_places (
    search_id uuid not null,
    request_id uuid not null,
    turn integer not null,
    operator_id uuid not null,
    assignment_id uuid,
    cell_id uuid not null,
    starts_at timestamp with time zone not null,
    ends_at timestamp with time zone not null,
    attendant_id uuid not null,
    booking_id uuid,
    constraint booking_plan_places_pk primary key (search_id, request_id, turn),
    constraint booking_plan_places_search_fk foreign key (search_id) references booking_searches (id),
    constraint booking_plan_places_span_ck check (starts_at < ends_at),
    constraint booking_plan_places_two_people_ck check (attendant_id <> operator_id)
);
