create table signoff_disagreements (
    id uuid not null,
    booking_id uuid not null,
    sheet_id uuid not null,
    part varchar(10) not null,
    item integer not null,
    expected varchar(200) not null,
    answer varchar(60) not null,
    says varchar(400) not null,
    answered_at timestamp with time zone not null,
    constraint signoff_disagreements_pk primary key (id),
    constraint signoff_disagreements_sheet_fk foreign key (sheet_id) references signoff_sheets (id)
);

create index signoff_disagreements_booking_ix on signoff_disagreements (booking_id, answered_at);
