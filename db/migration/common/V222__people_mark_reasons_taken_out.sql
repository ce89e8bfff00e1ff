-- when the reasons of an authorisation were taken out; null while they stand
alter table authorisations add column reasons_out_at timestamp with time zone;
