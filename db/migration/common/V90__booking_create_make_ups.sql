-- one booking beyond the quotas, and the first place on the waiting list, for a turn that was lost without fault
create table booking_make_ups (
    id uuid not null,
    lab_id uuid not null,
    person_id uuid not null,
    granted_by uuid not null,
    granted_at timestamp with time zone not null,
    valid_until timestamp with time zone not null,
    -- the booking for which it was lost; null when staff grant it for something else
    lost_booking uuid,
    used_by uuid,
    withdrawn_by uuid,
    withdrawn_at timestamp with time zone,
    constraint booking_make_ups_pk primary key (id),
    constraint booking_make_ups_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_make_ups_lost_fk foreign key (lost_booking) references bookings (id),
    constraint booking_make_ups_used_fk foreign key (used_by) references bookings (id),
    constraint booking_make_ups_span_ck check (granted_at < valid_until),
    constraint booking_make_ups_lost_uq unique (lost_booking),
    constraint booking_make_ups_withdrawn_ck check ((withdrawn_by is null) = (withdrawn_at is null))
);

create index booking_make_ups_person_ix on booking_make_ups (person_id, valid_until);
