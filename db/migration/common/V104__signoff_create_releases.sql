create table signoff_releases (
    id uuid not null,
    booking_id uuid not null,
    sheet_id uuid not null,
    cell_id uuid not null,
    cell_version integer not null,
    revision_id uuid not null,
    program_sha256 varchar(64) not null,
    declaration_sha256 varchar(64) not null,
    tool varchar(60) not null,
    payload_kg double precision,
    operator_id uuid not null,
    attendant_id uuid not null,
    releaser_id uuid not null,
    code varchar(4) not null,
    first_run boolean not null,
    pass_limit integer,
    issued_at timestamp with time zone not null,
    start_by timestamp with time zone not null,
    window_end timestamp with time zone not null,
    used_at timestamp with time zone,
    -- 1 from the release to its lapse or to the end of its run, then null for ever
    live integer,
    lapsed_at timestamp with time zone,
    lapse_rule varchar(40),
    because varchar(1000),
    constraint signoff_releases_pk primary key (id),
    constraint signoff_releases_sheet_uq unique (sheet_id),
    constraint signoff_releases_sheet_fk foreign key (sheet_id) references signoff_sheets (id),
    constraint signoff_releases_three_people_ck check (
        operator_id <> attendant_id and operator_id <> releaser_id and attendant_id <> releaser_id),
    constraint signoff_releases_booking_uq unique (booking_id, live),
    constraint signoff_releases_cell_uq unique (cell_id, live),
    constraint signoff_releases_operator_uq unique (operator_id, live),
    constraint signoff_releases_attendant_uq unique (attendant_id, live),
    constraint signoff_releases_live_ck check (live = 1),
    constraint signoff_releases_lapsed_ck check (
        (lapsed_at is null and lapse_rule is null and because is null)
        or (lapsed_at is not null and lapse_rule is not null and because is not null and live is null)),
    constraint signoff_releases_start_ck check (start_by <= window_end and issued_at < start_by)
);

create index signoff_releases_booking_ix on signoff_releases (booking_id, issued_at);
create index signoff_releases_revision_ix on signoff_releases (revision_id, cell_id);
