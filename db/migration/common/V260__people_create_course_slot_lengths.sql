-- how the length of a course's slots changed, and why
create table course_slot_lengths (
    id uuid not null,
    course_id uuid not null,
    slot_minutes integer,
    reason varchar(400) not null,
    changed_by uuid not null,
    changed_at timestamp with time zone not null,
    constraint course_slot_lengths_pk primary key (id),
    constraint course_slot_lengths_course_fk foreign key (course_id) references courses (id),
    constraint course_slot_lengths_slot_ck check (slot_minutes is null or slot_minutes between 10 and 240),
    constraint course_slot_lengths_reason_ck check (reason <> '')
);

create index course_slot_lengths_course_ix on course_slot_lengths (course_id, changed_at);
