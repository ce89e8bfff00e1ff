-- when the words of these rows were taken out, at the end of their time; null while they stand
alter table signoff_waivers add column words_out_at timestamp with time zone;

alter table signoff_waivers_taken_back add column words_out_at timestamp with time zone;

alter table signoff_paper_cards add column words_out_at timestamp with time zone;

create index signoff_waivers_expiry_ix on signoff_waivers (expires_at, id);

create index signoff_paper_cards_written_ix on signoff_paper_cards (written_at, id);
