-- words may be taken out at the end of their time: only while the same transaction holds the line that says so
drop trigger incident_restarts_immutable;

create trigger incident_restarts_words_out_only before update, delete on incident_restarts
    for each row call 'org.standclear.incident.records.RestartWordsOutOnly';

drop trigger incident_risk_reviews_immutable;

create trigger incident_risk_reviews_words_out_only before update, delete on incident_risk_reviews
    for each row call 'org.standclear.incident.records.OutcomesOutOnly';
