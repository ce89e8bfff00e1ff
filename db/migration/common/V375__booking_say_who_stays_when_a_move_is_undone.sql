-- whether a booking of a bulk move did not come back when the move was undone, since its operator had got another slot
alter table booking_bulk_moved add column stays boolean default false not null;
