create table check_answers (
    id uuid not null,
    revision_id uuid not null,
    cell_id uuid not null,
    cell_version integer not null,
    limits varchar(80) not null,
    rule_set varchar(40) not null,
    verdict varchar(20) not null,
    answer text not null,
    bench text not null,
    details text not null,
    answered_at timestamp with time zone not null,
    constraint check_answers_pk primary key (id),
    constraint check_answers_revision_fk foreign key (revision_id) references program_revisions (id),
    constraint check_answers_version_fk foreign key (cell_id, cell_version)
        references cell_versions (cell_id, number),
    constraint check_answers_verdict_ck check (verdict in ('WITHIN', 'OUTSIDE', 'NOT_CHECKABLE')),
    constraint check_answers_once_uq unique (revision_id, cell_id, cell_version, limits, rule_set)
);
