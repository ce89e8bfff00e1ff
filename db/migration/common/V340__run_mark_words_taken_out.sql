-- when the words of an event were taken out, at the end of their time; null while they stand
alter table run_events add column words_out_at timestamp with time zone;
