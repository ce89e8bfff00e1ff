create trigger cell_duty_intervals_immutable before update, delete on cell_duty_intervals
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger cell_duties_done_immutable before update, delete on cell_duties_done
    for each row call 'org.standclear.platform.database.RefuseChange';
