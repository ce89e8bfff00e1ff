create table person_roles (
    person_id uuid not null,
    role varchar(20) not null,
    constraint person_roles_pk primary key (person_id, role),
    constraint person_roles_person_fk foreign key (person_id) references people (id),
    constraint person_roles_role_ck
        check (role in ('STUDENT', 'TECHNICIAN', 'INSTRUCTOR', 'REVIEWER', 'ADMINISTRATOR', 'BENCH'))
);

create index person_roles_role_ix on person_roles (role, person_id);
