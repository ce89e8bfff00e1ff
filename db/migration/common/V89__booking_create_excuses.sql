-- what a student says about a booking that was lost; for lab staff and the student only
create table booking_pleas (
    booking_id uuid not null,
    words varchar(400) not null,
    sent_at timestamp with time zone not null,
    constraint booking_pleas_pk primary key (booking_id),
    constraint booking_pleas_booking_fk foreign key (booking_id) references bookings (id),
    constraint booking_pleas_words_ck check (words <> '')
);

-- a missed or late cancelled booking that no quota counts
create table booking_excuses (
    booking_id uuid not null,
    excused_by uuid not null,
    excused_at timestamp with time zone not null,
    constraint booking_excuses_pk primary key (booking_id),
    constraint booking_excuses_booking_fk foreign key (booking_id) references bookings (id)
);

-- what was lost before it is not counted any more
create table booking_resets (
    id uuid not null,
    lab_id uuid not null,
    person_id uuid not null,
    reset_by uuid not null,
    reset_at timestamp with time zone not null,
    constraint booking_resets_pk primary key (id),
    constraint booking_resets_lab_fk foreign key (lab_id) references labs (id)
);

create index booking_resets_person_ix on booking_resets (person_id, reset_at);
