-- a sign-in name that is not one of this lab's people, asked into a section; gone when it is answered, withdrawn or too old.
-- The name is kept as it was typed, whether or not anybody has it: nothing here may tell.
create table course_invitations (
    id uuid not null,
    lab_id uuid not null,
    section_id uuid not null,
    login varchar(60) not null,
    asked_by uuid not null,
    asked_at timestamp with time zone not null,
    constraint course_invitations_pk primary key (id),
    constraint course_invitations_lab_fk foreign key (lab_id) references labs (id),
    constraint course_invitations_section_fk foreign key (section_id) references sections (id),
    constraint course_invitations_once_uq unique (section_id, login),
    constraint course_invitations_login_ck check (login <> '')
);

create index course_invitations_login_ix on course_invitations (login);
