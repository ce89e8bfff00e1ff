create table people (
    id uuid not null,
    login varchar(60) not null,
    printed_name varchar(80) not null,
    -- the printed name in lower case: lists are ordered and searched by it on both engines alike
    sort_name varchar(160) not null,
    password_hash varchar(255) not null,
    must_change_password boolean not null,
    pin_hash varchar(255),
    active boolean not null,
    version integer not null,
    created_at timestamp with time zone not null,
    constraint people_pk primary key (id),
    constraint people_login_uq unique (login),
    constraint people_login_ck check (login <> '' and login = lower(login)),
    constraint people_printed_name_ck check (printed_name <> ''),
    constraint people_version_ck check (version > 0)
);

create index people_sort_name_ix on people (sort_name, id);
