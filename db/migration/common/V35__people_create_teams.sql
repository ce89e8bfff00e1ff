-- who was in a section and is not any more
create table past_enrolments (
    person_id uuid not null,
    section_id uuid not null,
    enrolled_at timestamp with time zone not null,
    ended_at timestamp with time zone not null,
    constraint past_enrolments_pk primary key (person_id, section_id, ended_at),
    constraint past_enrolments_person_fk foreign key (person_id) references people (id),
    constraint past_enrolments_section_fk foreign key (section_id) references sections (id)
);

-- pairs and teams of a section; who leaves one stays in its history
create table team_members (
    id uuid not null,
    section_id uuid not null,
    team varchar(40) not null,
    person_id uuid not null,
    from_at timestamp with time zone not null,
    until_at timestamp with time zone,
    constraint team_members_pk primary key (id),
    constraint team_members_section_fk foreign key (section_id) references sections (id),
    constraint team_members_person_fk foreign key (person_id) references people (id),
    constraint team_members_team_ck check (team <> '')
);

create index team_members_section_ix on team_members (section_id, until_at);
create index team_members_person_ix on team_members (person_id, until_at);
