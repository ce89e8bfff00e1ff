-- which bookings of a cell still want a close-out is asked at every release; years of closed ones are not read for it
create index bookings_cell_state_ix on bookings (cell_id, state);
