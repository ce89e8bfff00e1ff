create trigger signoff_paper_cards_immutable before update, delete on signoff_paper_cards
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_handovers_stay before delete on signoff_handovers
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_settings_immutable before update, delete on signoff_settings
    for each row call 'org.standclear.platform.database.RefuseChange';
