-- why it was given, and why it was withdrawn; for lab staff and the person
alter table booking_make_ups add column reason varchar(400);

alter table booking_make_ups add column withdrawn_reason varchar(400);
