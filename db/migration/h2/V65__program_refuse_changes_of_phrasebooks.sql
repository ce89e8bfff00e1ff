create trigger phrasebook_versions_immutable before update, delete on phrasebook_versions
    for each row call 'org.standclear.platform.database.RefuseChange';
