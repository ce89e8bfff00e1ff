create table enrolments (
    person_id uuid not null,
    section_id uuid not null,
    enrolled_at timestamp with time zone not null,
    constraint enrolments_pk primary key (person_id, section_id),
    constraint enrolments_person_fk foreign key (person_id) references people (id),
    constraint enrolments_section_fk foreign key (section_id) references sections (id)
);

create index enrolments_section_ix on enrolments (section_id);
