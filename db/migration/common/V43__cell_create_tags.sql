create table cell_tags (
    id uuid not null,
    cell_id uuid not null,
    kind varchar(20) not null,
    reason varchar(1000) not null,
    placed_by uuid not null,
    placed_at timestamp with time zone not null,
    caused_by uuid,
    lifted_by uuid,
    lifted_at timestamp with time zone,
    lift_reason varchar(1000),
    constraint cell_tags_pk primary key (id),
    constraint cell_tags_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_tags_kind_ck check (kind in ('RESTRICTION', 'HOLD', 'OUT_OF_SERVICE')),
    constraint cell_tags_reason_ck check (reason <> ''),
    constraint cell_tags_lifted_ck check ((lifted_by is null) = (lifted_at is null)),
    constraint cell_tags_not_causer_ck check (lifted_by is null or caused_by is null or lifted_by <> caused_by)
);

create index cell_tags_cell_ix on cell_tags (cell_id, placed_at);
