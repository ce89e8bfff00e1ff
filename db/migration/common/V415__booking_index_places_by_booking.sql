-- when staff move a booking its place in a plan goes with it: found by the booking
create index booking_plan_places_booking_ix on booking_plan_places (booking_id);
