create table trail_entries (
    lab uuid not null,
    sequence bigint not null,
    at timestamp with time zone not null,
    kind varchar(80) not null,
    subject varchar(200) not null,
    actor uuid,
    words varchar(2000) not null,
    facts varchar(100000) not null,
    previous_hash char(64) not null,
    hash char(64) not null,
    constraint trail_entries_pk primary key (lab, sequence),
    constraint trail_entries_lab_fk foreign key (lab) references labs (id),
    constraint trail_entries_sequence_ck check (sequence >= 1)
);

create index trail_entries_subject_ix on trail_entries (lab, subject, sequence);
create index trail_entries_at_ix on trail_entries (lab, at);

-- one row per lab: the lock under which a transaction appends, and the entry it has to follow.
-- The reference to the last entry also makes H2 refuse to truncate the entries.
create table trail_heads (
    lab uuid not null,
    sequence bigint,
    hash char(64) not null,
    constraint trail_heads_pk primary key (lab),
    constraint trail_heads_lab_fk foreign key (lab) references labs (id),
    constraint trail_heads_last_entry_fk foreign key (lab, sequence) references trail_entries (lab, sequence)
);

insert into trail_heads (lab, hash)
select id, '0000000000000000000000000000000000000000000000000000000000000000' from labs;
