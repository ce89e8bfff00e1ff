create trigger cell_tool_readings_immutable before update or delete on cell_tool_readings
    for each row execute function cell_refuse_change();

create trigger cell_stops_stay before delete on cell_stops
    for each row execute function cell_refuse_change();
