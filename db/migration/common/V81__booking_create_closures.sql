create table booking_closures (
    id uuid not null,
    lab_id uuid not null,
    cell_id uuid not null,
    starts_at timestamp with time zone not null,
    ends_at timestamp with time zone not null,
    kind varchar(20) not null,
    words varchar(200) not null,
    made_by uuid not null,
    made_at timestamp with time zone not null,
    removed_by uuid,
    removed_at timestamp with time zone,
    constraint booking_closures_pk primary key (id),
    constraint booking_closures_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_closures_cell_fk foreign key (cell_id) references cells (id),
    constraint booking_closures_span_ck check (starts_at < ends_at),
    constraint booking_closures_words_ck check (words <> ''),
    constraint booking_closures_removed_ck check ((removed_by is null) = (removed_at is null)),
    constraint booking_closures_kind_ck check (kind in ('CLASS', 'DEMONSTRATION', 'MAINTENANCE', 'EXAM'))
);

create index booking_closures_cell_ix on booking_closures (cell_id, ends_at);
create index booking_closures_lab_ix on booking_closures (lab_id, ends_at);
