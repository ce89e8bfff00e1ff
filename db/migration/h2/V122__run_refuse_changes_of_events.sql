create trigger run_events_immutable before update, delete on run_events
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger runs_stay before delete on runs
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger run_people_stay before delete on run_people
    for each row call 'org.standclear.platform.database.RefuseChange';
