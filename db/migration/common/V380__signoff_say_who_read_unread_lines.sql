-- what an instructor confirmed who set lines aside that the reader could not read; null where there were none
alter table signoff_waivers add column lines_read varchar(200);

-- waivers from before stay as they are, and let nothing be released
alter table signoff_waivers add column asked_for_lines boolean default false not null;

alter table signoff_waivers alter column asked_for_lines set default true;

alter table signoff_waivers add constraint signoff_waivers_lines_read_ck
    check (not asked_for_lines or lines_read is not null or checks not like '%coverage%');
