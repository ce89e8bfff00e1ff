create trigger signoff_preparations_immutable before update, delete on signoff_preparations
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_signatures_immutable before update, delete on signoff_signatures
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_answers_immutable before update, delete on signoff_answers
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_lapses_immutable before update, delete on signoff_lapses
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_disagreements_immutable before update, delete on signoff_disagreements
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_sheets_stay before delete on signoff_sheets
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger signoff_releases_stay before delete on signoff_releases
    for each row call 'org.standclear.platform.database.RefuseChange';
