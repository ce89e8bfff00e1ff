-- what an assignment needs of a cell: one tool at most, and features in words
create table assignment_needs (
    assignment_id uuid not null,
    kind varchar(10) not null,
    words varchar(60) not null,
    constraint assignment_needs_pk primary key (assignment_id, kind, words),
    constraint assignment_needs_assignment_fk foreign key (assignment_id) references assignments (id),
    constraint assignment_needs_kind_ck check (kind in ('TOOL', 'FEATURE')),
    constraint assignment_needs_words_ck check (words <> '')
);
