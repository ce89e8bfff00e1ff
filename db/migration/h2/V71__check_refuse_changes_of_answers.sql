create trigger check_answers_immutable before update, delete on check_answers
    for each row call 'org.standclear.platform.database.RefuseChange';
