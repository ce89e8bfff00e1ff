-- what is kept whatever its clock says, until a second person lifts it
create table retention_holds (
    id uuid not null,
    lab_id uuid not null,
    about varchar(10) not null,
    subject uuid,
    -- for a hold on a kind: which, or all of them when null, and the days on which the clocks started
    kind varchar(30),
    from_day date,
    until_day date,
    reason varchar(400) not null,
    authority varchar(200) not null,
    placed_by uuid not null,
    placed_at timestamp with time zone not null,
    lifted_by uuid,
    lifted_at timestamp with time zone,
    lift_reason varchar(400),
    constraint retention_holds_pk primary key (id),
    constraint retention_holds_lab_fk foreign key (lab_id) references labs (id),
    constraint retention_holds_about_ck check (about in ('PERSON', 'RUN', 'INCIDENT', 'KIND')),
    constraint retention_holds_subject_ck check ((about = 'KIND') = (subject is null)),
    constraint retention_holds_kind_ck check (about <> 'KIND' or kind is not null),
    constraint retention_holds_span_ck check (from_day is null or until_day is null or from_day <= until_day),
    constraint retention_holds_words_ck check (reason <> '' and authority <> ''),
    constraint retention_holds_lifted_ck check ((lifted_by is null) = (lifted_at is null)
        and (lifted_by is null) = (lift_reason is null)),
    constraint retention_holds_second_person_ck check (lifted_by is null or lifted_by <> placed_by)
);

create index retention_holds_standing_ix on retention_holds (lab_id, lifted_at);

create index retention_holds_subject_ix on retention_holds (subject, lifted_at);
