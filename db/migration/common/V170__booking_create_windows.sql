-- a stretch of days whose slots are shared out by a plan, and who accepted which plan
create table booking_windows (
    id uuid not null,
    lab_id uuid not null,
    title varchar(120) not null,
    first_day date not null,
    last_day date not null,
    requests_until timestamp with time zone not null,
    accepted_search uuid,
    accepted_by uuid,
    accepted_at timestamp with time zone,
    made_by uuid not null,
    made_at timestamp with time zone not null,
    constraint booking_windows_pk primary key (id),
    constraint booking_windows_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_windows_title_ck check (title <> ''),
    constraint booking_windows_days_ck check (first_day <= last_day),
    constraint booking_windows_accepted_ck check ((accepted_search is null) = (accepted_by is null)
        and (accepted_by is null) = (accepted_at is null))
);

create index booking_windows_lab_ix on booking_windows (lab_id, last_day);
