-- the latest credits of a lab, without a look at each of its bookings
create index run_credits_until_ix on run_credits (until_at, id);
