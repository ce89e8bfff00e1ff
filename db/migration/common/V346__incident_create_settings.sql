-- one row per change; the highest number is in force, and the program's defaults while there is none
create table incident_settings (
    lab_id uuid not null,
    number integer not null,
    contact_form_hours integer not null,
    injury_form_hours integer not null,
    effect_check_days integer not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    reason varchar(400) not null,
    constraint incident_settings_pk primary key (lab_id, number),
    constraint incident_settings_lab_fk foreign key (lab_id) references labs (id),
    constraint incident_settings_reason_ck check (reason <> ''),
    constraint incident_settings_numbers_ck check (contact_form_hours between 1 and 24
        and injury_form_hours between 1 and 72 and effect_check_days between 7 and 365)
);
