-- a roster that was read: its rows stay for the preview, what it changed stays for its undoing
create table roster_imports (
    id uuid not null,
    lab_id uuid not null,
    file_name varchar(200) not null,
    file_sha256 varchar(64) not null,
    state varchar(10) not null,
    read_by uuid not null,
    read_at timestamp with time zone not null,
    decided_by uuid,
    decided_at timestamp with time zone,
    constraint roster_imports_pk primary key (id),
    constraint roster_imports_lab_fk foreign key (lab_id) references labs (id),
    constraint roster_imports_state_ck check (state in ('READ', 'APPLIED', 'UNDONE'))
);

create table roster_rows (
    import_id uuid not null,
    line integer not null,
    login varchar(60) not null,
    printed_name varchar(80) not null,
    address varchar(254) not null,
    course varchar(20) not null,
    section varchar(20) not null,
    team varchar(40) not null,
    constraint roster_rows_pk primary key (import_id, line),
    constraint roster_rows_import_fk foreign key (import_id) references roster_imports (id)
);

create table roster_effects (
    import_id uuid not null,
    number integer not null,
    kind varchar(20) not null,
    person_id uuid not null,
    section_id uuid,
    -- when the person had been enrolled, for who was taken out
    since timestamp with time zone,
    constraint roster_effects_pk primary key (import_id, number),
    constraint roster_effects_import_fk foreign key (import_id) references roster_imports (id),
    constraint roster_effects_person_fk foreign key (person_id) references people (id),
    constraint roster_effects_kind_ck check (kind in ('ADDED', 'ENROLLED', 'TAKEN_OUT', 'TEAMED'))
);
