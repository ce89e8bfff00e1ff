-- out of use since then; its record stays
alter table labs add column closed_at timestamp with time zone;
