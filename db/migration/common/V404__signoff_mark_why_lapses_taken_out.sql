-- when the words of these rows were taken out, at the end of their time; null while they stand
alter table signoff_lapses add column words_out_at timestamp with time zone;

alter table signoff_releases add column words_out_at timestamp with time zone;

alter table signoff_sheets add column words_out_at timestamp with time zone;

create index signoff_lapses_at_ix on signoff_lapses (lapsed_at, id);
