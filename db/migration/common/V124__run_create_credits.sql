-- minutes that a precautionary stop took from somebody's slot; they are made up, never counted against anybody
create table run_credits (
    id uuid not null,
    booking_id uuid not null,
    person_id uuid not null,
    minutes integer not null,
    stopped_at timestamp with time zone not null,
    until_at timestamp with time zone not null,
    event_id uuid not null,
    constraint run_credits_pk primary key (id),
    constraint run_credits_event_uq unique (event_id),
    constraint run_credits_event_fk foreign key (event_id) references run_events (id),
    constraint run_credits_minutes_ck check (minutes between 1 and 240),
    constraint run_credits_span_ck check (stopped_at < until_at)
);

create index run_credits_person_ix on run_credits (person_id, until_at);
create index run_credits_booking_ix on run_credits (booking_id);
