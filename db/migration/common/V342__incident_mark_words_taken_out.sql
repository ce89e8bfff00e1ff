-- when these words were taken out, at the end of their time; null while they stand
alter table incident_restarts add column words_out_at timestamp with time zone;

alter table incident_risk_reviews add column words_out_at timestamp with time zone;

alter table incidents add column closing_out_at timestamp with time zone;
