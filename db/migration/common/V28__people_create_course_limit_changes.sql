create table course_limit_changes (
    course_id uuid not null,
    version integer not null,
    override_percent double precision not null,
    tool_speed_mm_s double precision,
    reason varchar(400) not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    constraint course_limit_changes_pk primary key (course_id, version),
    constraint course_limit_changes_course_fk foreign key (course_id) references courses (id),
    constraint course_limit_changes_person_fk foreign key (changed_by) references people (id),
    constraint course_limit_changes_reason_ck check (reason <> '')
);
