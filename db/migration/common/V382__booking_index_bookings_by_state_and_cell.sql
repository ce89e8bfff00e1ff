-- the state first, for the same reason: by cell first, H2 read all that was ever booked on it at every look at the bench
drop index bookings_cell_state_ix;
create index bookings_state_cell_ix on bookings (state, cell_id);
