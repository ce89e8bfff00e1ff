create table booking_reminders (
    booking_id uuid not null,
    hours integer not null,
    reminded_at timestamp with time zone not null,
    constraint booking_reminders_pk primary key (booking_id, hours),
    constraint booking_reminders_booking_fk foreign key (booking_id) references bookings (id)
);
