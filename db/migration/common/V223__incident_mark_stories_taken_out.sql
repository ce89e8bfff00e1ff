-- when reporter and free text were taken out; null while they stand
alter table incidents add column story_out_at timestamp with time zone;
