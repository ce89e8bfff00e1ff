-- every few seconds a lab looks for its bookings in a state, and staff for the turns that were lost lately: with the lab behind
-- the state neither reads what lies years back, or in another lab. The state first: H2 follows a list of them only there
drop index bookings_state_ix;
create index bookings_state_lab_ix on bookings (state, lab_id, starts_at);
