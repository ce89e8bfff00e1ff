create table signoff_lapses (
    id uuid not null,
    booking_id uuid not null,
    release_id uuid,
    what varchar(20) not null,
    code varchar(40) not null,
    because varchar(1000) not null,
    lapsed_at timestamp with time zone not null,
    constraint signoff_lapses_pk primary key (id),
    constraint signoff_lapses_release_fk foreign key (release_id) references signoff_releases (id),
    constraint signoff_lapses_what_ck check (what in ('check', 'session list', 'short list', 'release'))
);

create index signoff_lapses_booking_ix on signoff_lapses (booking_id, lapsed_at);
