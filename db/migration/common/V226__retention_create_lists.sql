-- what an administrator approved for disposal in a month, and how far it is carried out
create table retention_lists (
    id uuid not null,
    lab_id uuid not null,
    month_code varchar(7) not null,
    fingerprint varchar(64) not null,
    records integer not null,
    approved_by uuid not null,
    approved_at timestamp with time zone not null,
    finished_at timestamp with time zone,
    constraint retention_lists_pk primary key (id),
    constraint retention_lists_lab_fk foreign key (lab_id) references labs (id),
    constraint retention_lists_month_uq unique (lab_id, month_code),
    constraint retention_lists_records_ck check (records > 0)
);

create table retention_items (
    list_id uuid not null,
    number integer not null,
    kind varchar(30) not null,
    record_id uuid not null,
    clock_start timestamp with time zone not null,
    rule_number integer not null,
    rule_words varchar(200) not null,
    state varchar(10) not null,
    because varchar(300) not null,
    settled_at timestamp with time zone,
    -- the database's name of the transaction that disposes of it: guarded tables let a row go in that one only
    transaction_mark varchar(60),
    constraint retention_items_pk primary key (list_id, number),
    constraint retention_items_list_fk foreign key (list_id) references retention_lists (id),
    constraint retention_items_record_uq unique (list_id, kind, record_id),
    constraint retention_items_state_ck check (state in ('PENDING', 'DONE', 'KEPT', 'GONE', 'FAILED')),
    constraint retention_items_settled_ck check ((state = 'PENDING') = (settled_at is null))
);

create index retention_items_state_ix on retention_items (state, list_id, number);

create index retention_items_record_ix on retention_items (record_id, state);
