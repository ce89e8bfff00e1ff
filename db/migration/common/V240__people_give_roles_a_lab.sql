-- what a person is, they are in one lab; an administrator's row counts in every lab, whichever lab it names
alter table person_roles add column lab_id uuid default '00000000-0000-7000-8000-000000000001' not null;

alter table person_roles alter column lab_id drop default;

alter table person_roles add constraint person_roles_lab_fk foreign key (lab_id) references labs (id);

alter table person_roles drop constraint person_roles_pk;

alter table person_roles add constraint person_roles_pk primary key (person_id, lab_id, role);

create index person_roles_lab_ix on person_roles (lab_id, role, person_id);
