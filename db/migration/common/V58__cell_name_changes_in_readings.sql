-- a reading that was made for a tool change counts for that change and for no other
alter table cell_tool_readings add column change_id uuid;

alter table cell_tool_readings add constraint cell_tool_readings_change_fk
    foreign key (change_id) references cell_tool_changes (id);

create index cell_tool_readings_change_ix on cell_tool_readings (change_id, read_at);
