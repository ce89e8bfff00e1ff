-- words may be taken out at the end of their time: only while the same transaction holds the line that says so
drop trigger run_events_immutable;

create trigger run_events_words_out_only before update, delete on run_events
    for each row call 'org.standclear.run.records.RunWordsOutOnly';
