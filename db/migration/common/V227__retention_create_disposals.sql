-- the disposal log: what became of a list, by kind and rule; no record, and nobody but who approved it, is named
create table retention_disposals (
    list_id uuid not null,
    kind varchar(30) not null,
    rule_number integer not null,
    rule_words varchar(200) not null,
    disposed integer not null,
    kept_back integer not null,
    gone integer not null,
    failed integer not null,
    earliest_start timestamp with time zone not null,
    latest_start timestamp with time zone not null,
    approved_by uuid not null,
    approved_at timestamp with time zone not null,
    finished_at timestamp with time zone not null,
    constraint retention_disposals_pk primary key (list_id, kind, rule_number, rule_words),
    constraint retention_disposals_list_fk foreign key (list_id) references retention_lists (id),
    constraint retention_disposals_counts_ck check (
        disposed >= 0 and kept_back >= 0 and gone >= 0 and failed >= 0)
);
