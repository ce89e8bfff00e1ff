create table courses (
    id uuid not null,
    lab_id uuid not null,
    code varchar(20) not null,
    title varchar(120) not null,
    override_percent double precision not null,
    tool_speed_mm_s double precision,
    version integer not null,
    constraint courses_pk primary key (id),
    constraint courses_lab_fk foreign key (lab_id) references labs (id),
    constraint courses_code_uq unique (lab_id, code),
    constraint courses_override_ck check (override_percent > 0 and override_percent <= 100),
    constraint courses_tool_speed_ck check (tool_speed_mm_s is null or (tool_speed_mm_s > 0 and tool_speed_mm_s <= 10000)),
    constraint courses_version_ck check (version > 0)
);
