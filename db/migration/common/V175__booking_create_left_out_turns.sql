-- turns that a plan leaves out, and why
create table booking_left_out_turns (
    search_id uuid not null,
    request_id uuid not null,
    turn integer not null,
    operator_id uuid not null,
    rule varchar(20) not null,
    says varchar(400) not null,
    constraint booking_left_out_turns_pk primary key (search_id, request_id, turn),
    constraint booking_left_out_turns_search_fk foreign key (search_id) references booking_searches (id)
);
