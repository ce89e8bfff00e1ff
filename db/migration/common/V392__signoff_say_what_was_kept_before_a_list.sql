-- the last tag, test and stop of the cell and the last lapse of the booking when the list was opened; what has a higher
-- number came after. Of lists opened before these numbers were kept everything counts as after: the values are read again
alter table signoff_sheets add column last_tag bigint default 0 not null;

alter table signoff_sheets add column last_test bigint default 0 not null;

alter table signoff_sheets add column last_stop bigint default 0 not null;

alter table signoff_sheets add column last_lapse bigint default 0 not null;
