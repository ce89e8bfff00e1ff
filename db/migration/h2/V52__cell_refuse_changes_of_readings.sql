create trigger cell_tool_readings_immutable before update, delete on cell_tool_readings
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger cell_stops_stay before delete on cell_stops
    for each row call 'org.standclear.platform.database.RefuseChange';
