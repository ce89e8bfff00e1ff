-- what taking a roster back really changed, in the order in which its page lists it: other acts may have come between
create table roster_returns (
    import_id uuid not null,
    number integer not null,
    kind varchar(10) not null,
    person_id uuid not null,
    section_id uuid,
    -- how many bookings the person had ahead and was told of; 0 when nobody had to be told
    told_bookings integer not null,
    constraint roster_returns_pk primary key (import_id, number),
    constraint roster_returns_import_fk foreign key (import_id) references roster_imports (id),
    constraint roster_returns_person_fk foreign key (person_id) references people (id),
    constraint roster_returns_section_fk foreign key (section_id) references sections (id),
    constraint roster_returns_kind_ck check (kind in ('BACK', 'ENDED', 'CLOSED')),
    constraint roster_returns_section_ck check ((section_id is null) = (kind = 'CLOSED')),
    constraint roster_returns_told_ck check (told_bookings >= 0)
);

create index roster_returns_person_ix on roster_returns (person_id, import_id);
