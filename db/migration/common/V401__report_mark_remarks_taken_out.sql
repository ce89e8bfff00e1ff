-- when the remark was taken out, at the end of its time; null while it stands
alter table report_exception_readings add column words_out_at timestamp with time zone;

create index report_exception_readings_signed_ix on report_exception_readings (signed_at, id);
