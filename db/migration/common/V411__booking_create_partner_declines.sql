-- who has said that they will not stand at somebody's e-stop in a window; it outlives the request, which may be sent again
create table booking_partner_declines (
    window_id uuid not null,
    operator_id uuid not null,
    partner_id uuid not null,
    declined_at timestamp with time zone not null,
    constraint booking_partner_declines_pk primary key (window_id, operator_id, partner_id),
    constraint booking_partner_declines_window_fk foreign key (window_id) references booking_windows (id)
);
