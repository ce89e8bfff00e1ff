-- how many changes of the limits of the booking's courses were committed when the check was kept; another count now means
-- that one came since. Counted, because numbers are given out before they are committed: the greater one of two changes at
-- once hid the lesser. Of checks kept before that nothing is known, and they are looked at once more
alter table signoff_preparations add column limit_changes bigint default -1 not null;
