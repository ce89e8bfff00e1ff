-- tools, parts and fixtures of the lab; one registers, another approves, nobody changes a row's data
create table cell_equipment (
    id uuid not null,
    lab_id uuid not null,
    kind varchar(10) not null,
    code varchar(30) not null,
    name varchar(100) not null,
    mass_kg double precision not null,
    offset_x_mm double precision,
    offset_y_mm double precision,
    offset_z_mm double precision,
    overhang_mm double precision,
    edges boolean not null,
    registered_by uuid not null,
    registered_at timestamp with time zone not null,
    approved_by uuid,
    approved_at timestamp with time zone,
    -- 1 while it is in use, null for ever once another row took its place or it is gone
    live integer,
    constraint cell_equipment_pk primary key (id),
    constraint cell_equipment_lab_fk foreign key (lab_id) references labs (id),
    constraint cell_equipment_code_uq unique (lab_id, kind, code, live),
    constraint cell_equipment_kind_ck check (kind in ('TOOL', 'PART', 'FIXTURE')),
    constraint cell_equipment_live_ck check (live = 1),
    constraint cell_equipment_mass_ck check (mass_kg > 0 and mass_kg <= 100),
    constraint cell_equipment_tool_ck check (kind <> 'TOOL' or (offset_x_mm is not null and offset_y_mm is not null
        and offset_z_mm is not null and overhang_mm is not null and overhang_mm >= 0)),
    constraint cell_equipment_two_people_ck check (approved_by is null or approved_by <> registered_by)
);

create table cell_tool_changes (
    id uuid not null,
    cell_id uuid not null,
    tool_id uuid not null,
    begun_by uuid not null,
    begun_at timestamp with time zone not null,
    -- 1 while the tool is off or not read twice
    open_mark integer,
    ended_at timestamp with time zone,
    version integer,
    constraint cell_tool_changes_pk primary key (id),
    constraint cell_tool_changes_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_tool_changes_tool_fk foreign key (tool_id) references cell_equipment (id),
    constraint cell_tool_changes_open_uq unique (cell_id, open_mark),
    constraint cell_tool_changes_open_ck check ((open_mark is not null and ended_at is null)
        or (open_mark is null and ended_at is not null))
);
