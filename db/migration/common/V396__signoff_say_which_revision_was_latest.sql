-- the number of the program's latest revision when the release was issued: one with a higher number came after, whatever the
-- clock says. Of releases issued before these numbers only the time is known
alter table signoff_releases add column last_revision integer;
