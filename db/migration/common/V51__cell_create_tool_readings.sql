create table cell_tool_readings (
    id uuid not null,
    cell_id uuid not null,
    read_by uuid not null,
    read_at timestamp with time zone not null,
    tool_code varchar(60) not null,
    offset_x_mm double precision not null,
    offset_y_mm double precision not null,
    offset_z_mm double precision not null,
    constraint cell_tool_readings_pk primary key (id),
    constraint cell_tool_readings_cell_fk foreign key (cell_id) references cells (id)
);

create index cell_tool_readings_cell_ix on cell_tool_readings (cell_id, read_at);
