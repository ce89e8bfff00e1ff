-- when the bytes were replaced by a note, at the end of their time; null while they stand
alter table program_contents add column taken_out_at timestamp with time zone;
