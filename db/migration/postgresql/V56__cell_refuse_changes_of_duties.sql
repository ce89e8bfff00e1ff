create trigger cell_duty_intervals_immutable before update or delete on cell_duty_intervals
    for each row execute function cell_refuse_change();

create trigger cell_duties_done_immutable before update or delete on cell_duties_done
    for each row execute function cell_refuse_change();
