-- what a run of an assignment can show; one that is not used any more stays for what was linked to it
create table assignment_criteria (
    id uuid not null,
    assignment_id uuid not null,
    place integer not null,
    words varchar(200) not null,
    points integer,
    added_by uuid not null,
    added_at timestamp with time zone not null,
    retired_by uuid,
    retired_at timestamp with time zone,
    constraint assignment_criteria_pk primary key (id),
    constraint assignment_criteria_assignment_fk foreign key (assignment_id) references assignments (id),
    constraint assignment_criteria_place_uq unique (assignment_id, place),
    constraint assignment_criteria_words_ck check (words <> ''),
    constraint assignment_criteria_points_ck check (points is null or points between 0 and 1000),
    constraint assignment_criteria_retired_ck check ((retired_by is null) = (retired_at is null))
);
