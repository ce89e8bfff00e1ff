-- all bookings of a cell that went down, moved in one act
create table booking_bulk_moves (
    id uuid not null,
    lab_id uuid not null,
    cell_id uuid not null,
    moved_by uuid not null,
    moved_at timestamp with time zone not null,
    reason varchar(200) not null,
    undone_by uuid,
    undone_at timestamp with time zone,
    constraint booking_bulk_moves_pk primary key (id),
    constraint booking_bulk_moves_lab_fk foreign key (lab_id) references labs (id),
    constraint booking_bulk_moves_undone_ck check ((undone_by is null) = (undone_at is null))
);

create table booking_bulk_moved (
    bulk_id uuid not null,
    number integer not null,
    was_booking uuid not null,
    -- null when no free slot was left: a make-up and the first place on the waiting list instead
    now_booking uuid,
    constraint booking_bulk_moved_pk primary key (bulk_id, number),
    constraint booking_bulk_moved_bulk_fk foreign key (bulk_id) references booking_bulk_moves (id),
    constraint booking_bulk_moved_was_fk foreign key (was_booking) references bookings (id),
    constraint booking_bulk_moved_now_fk foreign key (now_booking) references bookings (id)
);
