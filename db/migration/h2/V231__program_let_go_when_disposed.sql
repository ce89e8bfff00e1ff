-- bytes may be replaced by a note at the end of their time: only while the same transaction holds the line that says so
drop trigger program_contents_immutable;

create trigger program_contents_taken_out_only before update, delete on program_contents
    for each row call 'org.standclear.platform.database.TakenOutOnly';
