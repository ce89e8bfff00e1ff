create table cell_day_tests (
    id uuid not null,
    cell_id uuid not null,
    cell_version integer not null,
    lab_date date not null,
    tested_by uuid not null,
    tested_at timestamp with time zone not null,
    passed boolean not null,
    failures varchar(2000) not null,
    stop_station varchar(80) not null,
    stayed_stopped boolean not null,
    restarted_on_unlatching boolean not null,
    arm_sound boolean not null,
    power varchar(10) not null,
    sensitivity varchar(40) not null,
    override_percent double precision not null,
    tool_code varchar(60) not null,
    line_and_sign_in_place boolean not null,
    constraint cell_day_tests_pk primary key (id),
    constraint cell_day_tests_version_fk foreign key (cell_id, cell_version)
        references cell_versions (cell_id, number),
    constraint cell_day_tests_passed_ck check (passed = (failures = '')),
    constraint cell_day_tests_power_ck check (power in ('reduced', 'full'))
);

create index cell_day_tests_cell_ix on cell_day_tests (cell_id, lab_date, tested_at);
