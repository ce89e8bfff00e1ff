-- one row per change; the highest number is in force, and the program's defaults while there is none
create table booking_settings (
    lab_id uuid not null,
    number integer not null,
    slot_minutes integer not null,
    horizon_days integer not null,
    future_per_person integer not null,
    week_per_person integer not null,
    per_assignment integer not null,
    late_release_hours integer not null,
    late_cancel_minutes integer not null,
    check_in_opens_minutes integer not null,
    grace_minutes integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint booking_settings_pk primary key (lab_id, number),
    constraint booking_settings_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_settings_reason_ck check (reason <> ''),
    constraint booking_settings_numbers_ck check (slot_minutes between 10 and 240 and horizon_days between 1 and 180
        and future_per_person >= 0 and week_per_person >= 0 and per_assignment >= 0 and late_release_hours >= 0
        and late_cancel_minutes >= 0 and check_in_opens_minutes >= 0 and grace_minutes between 1 and slot_minutes)
);
