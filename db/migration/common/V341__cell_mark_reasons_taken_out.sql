-- when the reasons of a tag that came off were taken out, at the end of their time; null while they stand
alter table cell_tags add column words_out_at timestamp with time zone;

create index cell_tags_lifted_ix on cell_tags (lifted_at, id);
