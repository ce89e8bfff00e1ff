create table signoff_preparations (
    id uuid not null,
    booking_id uuid not null,
    revision_id uuid not null,
    cell_id uuid not null,
    cell_version integer not null,
    answer_id uuid not null,
    within_limits boolean not null,
    checked_at timestamp with time zone not null,
    constraint signoff_preparations_pk primary key (id)
);

create index signoff_preparations_booking_ix on signoff_preparations (booking_id, checked_at);
