create trigger signoff_first_answers_immutable before update, delete on signoff_first_answers
    for each row call 'org.standclear.platform.database.RefuseChange';
