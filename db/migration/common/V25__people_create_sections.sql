create table sections (
    id uuid not null,
    course_id uuid not null,
    code varchar(20) not null,
    constraint sections_pk primary key (id),
    constraint sections_course_fk foreign key (course_id) references courses (id),
    constraint sections_code_uq unique (course_id, code)
);
