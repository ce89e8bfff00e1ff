-- a question that a person asked about a line of their own record, and its answer
create table report_questions (
    id uuid not null,
    lab_id uuid not null,
    asked_by uuid not null,
    about varchar(300) not null,
    words varchar(1000) not null,
    asked_at timestamp with time zone not null,
    answer varchar(1000),
    answered_by uuid,
    answered_at timestamp with time zone,
    constraint report_questions_pk primary key (id),
    constraint report_questions_lab_fk foreign key (lab_id) references labs (id),
    constraint report_questions_words_ck check (words <> ''),
    constraint report_questions_answered_ck check ((answer is null) = (answered_by is null)
        and (answer is null) = (answered_at is null)),
    constraint report_questions_not_own_ck check (answered_by is null or answered_by <> asked_by)
);

create index report_questions_asked_ix on report_questions (asked_by, asked_at);
create index report_questions_open_ix on report_questions (lab_id, answered_at);
