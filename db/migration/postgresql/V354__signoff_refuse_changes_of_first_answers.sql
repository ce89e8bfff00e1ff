create trigger signoff_first_answers_immutable before update or delete on signoff_first_answers
    for each row execute function signoff_refuse_change();
