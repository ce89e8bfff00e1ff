-- the last change of any course's limits and the cell's phrasebook when the check was kept; what has a higher number came
-- after. Of checks kept before these numbers everything counts as after, and is looked at once more
alter table signoff_preparations add column last_limit_change bigint default 0 not null;

alter table signoff_preparations add column last_book integer default 0 not null;
