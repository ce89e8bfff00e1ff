create table signoff_sheets (
    id uuid not null,
    booking_id uuid not null,
    cell_id uuid not null,
    round_number integer not null,
    list varchar(10) not null,
    brief boolean not null,
    revision_id uuid not null,
    cell_version integer not null,
    answer_id uuid not null,
    operator_id uuid not null,
    attendant_id uuid not null,
    opened_at timestamp with time zone not null,
    -- 1 while it can be signed, null for ever after: so that a booking has one open list at most
    open_mark integer,
    closed_at timestamp with time zone,
    outcome varchar(10),
    because varchar(1000),
    constraint signoff_sheets_pk primary key (id),
    constraint signoff_sheets_round_uq unique (booking_id, round_number),
    constraint signoff_sheets_open_uq unique (booking_id, open_mark),
    constraint signoff_sheets_list_ck check (list in ('session', 'bench')),
    constraint signoff_sheets_outcome_ck check (outcome in ('DONE', 'REFUSED', 'VOID')),
    constraint signoff_sheets_open_ck check ((open_mark is not null and open_mark = 1 and closed_at is null)
        or (open_mark is null and closed_at is not null and outcome is not null)),
    constraint signoff_sheets_people_ck check (operator_id <> attendant_id)
);
