create table signoff_drafts (
    sheet_id uuid not null,
    account_id uuid not null,
    part varchar(10) not null,
    item integer not null,
    field varchar(20) not null,
    answer varchar(60) not null,
    constraint signoff_drafts_pk primary key (sheet_id, account_id, part, item, field),
    constraint signoff_drafts_sheet_fk foreign key (sheet_id) references signoff_sheets (id)
);
