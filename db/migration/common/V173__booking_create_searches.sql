-- a search for a plan: how far it is, and whether whoever does it is still alive
create table booking_searches (
    id uuid not null,
    window_id uuid not null,
    state varchar(10) not null,
    seed bigint not null,
    -- what was found and how little there could be, level by level
    standing varchar(1000) not null,
    stop_asked boolean not null,
    says varchar(400) not null,
    begun_by uuid not null,
    begun_at timestamp with time zone not null,
    alive_at timestamp with time zone not null,
    ended_at timestamp with time zone,
    constraint booking_searches_pk primary key (id),
    constraint booking_searches_window_fk foreign key (window_id) references booking_windows (id),
    constraint booking_searches_state_ck check (state in ('RUNNING', 'FOUND', 'STOPPED', 'FAILED', 'LOST'))
);

create index booking_searches_window_ix on booking_searches (window_id, begun_at);
