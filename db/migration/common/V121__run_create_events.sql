create table run_events (
    id uuid not null,
    cell_id uuid not null,
    booking_id uuid,
    run_id uuid,
    release_id uuid,
    kind varchar(20) not null,
    item integer,
    answer varchar(40) not null,
    words varchar(500) not null,
    account_id uuid not null,
    happened_at timestamp with time zone not null,
    corrects uuid,
    constraint run_events_pk primary key (id),
    constraint run_events_run_fk foreign key (run_id) references runs (id),
    constraint run_events_corrects_fk foreign key (corrects) references run_events (id),
    constraint run_events_item_uq unique (run_id, kind, item),
    constraint run_events_kind_ck check (kind in ('STARTED', 'E_STOP_PRESS', 'PROTECTIVE_STOP', 'RESET', 'PASS',
        'FINISHED', 'CLOSE_OUT', 'CORRECTION'))
);

create index run_events_run_ix on run_events (run_id, happened_at, id);
create index run_events_booking_ix on run_events (booking_id, happened_at, id);
create index run_events_cell_ix on run_events (cell_id, happened_at, id);
