create table cell_versions (
    cell_id uuid not null,
    number integer not null,
    file text not null,
    sha256 varchar(64) not null,
    fitted_tool varchar(60) not null,
    proposed_by uuid not null,
    approved_by uuid not null,
    in_force_since timestamp with time zone not null,
    reason varchar(1000) not null,
    constraint cell_versions_pk primary key (cell_id, number),
    constraint cell_versions_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_versions_number_ck check (number > 0),
    constraint cell_versions_two_people_ck check (proposed_by <> approved_by)
);
