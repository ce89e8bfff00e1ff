create trigger program_contents_immutable before update, delete on program_contents
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger program_revisions_immutable before update, delete on program_revisions
    for each row call 'org.standclear.platform.database.RefuseChange';
