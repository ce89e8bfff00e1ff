-- why something lapsed may be taken out at the end of its time, in the transaction that says so; the guard of releases knows
-- the same
drop trigger signoff_lapses_immutable;

create trigger signoff_lapses_words_out_only before update, delete on signoff_lapses
    for each row call 'org.standclear.signoff.records.LapseWordsOutOnly';
