-- what a cell offers beyond the usual, in words; who takes one away leaves the row
create table cell_features (
    id uuid not null,
    cell_id uuid not null,
    words varchar(60) not null,
    added_by uuid not null,
    added_at timestamp with time zone not null,
    removed_by uuid,
    removed_at timestamp with time zone,
    -- 1 while the cell has it
    live integer,
    constraint cell_features_pk primary key (id),
    constraint cell_features_cell_fk foreign key (cell_id) references cells (id),
    constraint cell_features_once_uq unique (cell_id, words, live),
    constraint cell_features_words_ck check (words <> ''),
    constraint cell_features_live_ck check (live = 1),
    constraint cell_features_removed_ck check ((removed_by is null) = (removed_at is null)
        and (removed_at is null) = (live is not null))
);
