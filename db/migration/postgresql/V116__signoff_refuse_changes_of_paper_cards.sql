create trigger signoff_paper_cards_immutable before update or delete on signoff_paper_cards
    for each row execute function signoff_refuse_change();

create trigger signoff_handovers_stay before delete on signoff_handovers
    for each row execute function signoff_refuse_change();

create trigger signoff_settings_immutable before update or delete on signoff_settings
    for each row execute function signoff_refuse_change();
