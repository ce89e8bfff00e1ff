alter table bookings add column confirmed_at timestamp with time zone;

-- when anything about it changed last, for calendar feeds
alter table bookings add column changed_at timestamp with time zone;

update bookings set changed_at = made_at;
