-- one row per change; the highest number is in force, and the program's defaults while there is none
create table signoff_settings (
    lab_id uuid not null,
    number integer not null,
    release_holds_minutes integer not null,
    session_opens_minutes integer not null,
    turn_minutes integer not null,
    rest_minutes integer not null,
    first_run_minutes integer not null,
    look_after_stops integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint signoff_settings_pk primary key (lab_id, number),
    constraint signoff_settings_lab_fk foreign key (lab_id) references labs (id),
    constraint signoff_settings_reason_ck check (reason <> ''),
    constraint signoff_settings_numbers_ck check (release_holds_minutes between 1 and 30
        and session_opens_minutes between 0 and 60 and turn_minutes between 1 and 60 and rest_minutes between 1 and 60
        and first_run_minutes between 1 and 60 and look_after_stops between 1 and 5)
);
