create trigger trail_entries_no_change before update, delete on trail_entries
    for each row call 'org.standclear.trail.AppendOnly';

create trigger trail_heads_forward_only before update, delete on trail_heads
    for each row call 'org.standclear.trail.ForwardOnly';
