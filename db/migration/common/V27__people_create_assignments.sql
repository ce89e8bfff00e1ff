create table assignments (
    id uuid not null,
    course_id uuid not null,
    title varchar(120) not null,
    minimum_runs integer not null,
    constraint assignments_pk primary key (id),
    constraint assignments_course_fk foreign key (course_id) references courses (id),
    constraint assignments_title_uq unique (course_id, title),
    constraint assignments_minimum_runs_ck check (minimum_runs between 1 and 100)
);

create table assignment_due_dates (
    assignment_id uuid not null,
    section_id uuid not null,
    due_at timestamp with time zone not null,
    constraint assignment_due_dates_pk primary key (assignment_id, section_id),
    constraint assignment_due_dates_assignment_fk foreign key (assignment_id) references assignments (id),
    constraint assignment_due_dates_section_fk foreign key (section_id) references sections (id)
);

create index assignment_due_dates_section_ix on assignment_due_dates (section_id, due_at);
