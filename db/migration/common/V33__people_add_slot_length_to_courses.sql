-- how long a slot of the course's students is; null for the lab's
alter table courses add column slot_minutes integer;

alter table courses add constraint courses_slot_ck check (slot_minutes is null or slot_minutes between 10 and 240);
