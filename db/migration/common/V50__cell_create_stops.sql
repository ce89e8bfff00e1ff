create table cell_stops (
    id uuid not null,
    cell_id uuid not null,
    arm_stopped_itself boolean not null,
    logged_by uuid not null,
    happened_at timestamp with time zone not null,
    reset_by uuid,
    reset_at timestamp with time zone,
    cause varchar(40),
    precaution boolean,
    constraint cell_stops_pk primary key (id),
    constraint cell_stops_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_stops_reset_ck check ((reset_by is null) = (reset_at is null) and (reset_by is null) = (cause is null)
        and (reset_by is null) = (precaution is null)),
    constraint cell_stops_precaution_ck check (precaution is null or not (precaution and arm_stopped_itself))
);

create index cell_stops_cell_ix on cell_stops (cell_id, happened_at);
