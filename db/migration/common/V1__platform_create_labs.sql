create table labs (
    id uuid not null,
    college varchar(200) not null,
    room varchar(200) not null,
    name varchar(200) not null,
    zone varchar(64) not null,
    emergency_number varchar(40) not null,
    first_aider varchar(200) not null,
    stop_map varchar(400) not null,
    constraint labs_pk primary key (id)
);

insert into labs (id, college, room, name, zone, emergency_number, first_aider, stop_map)
values ('00000000-0000-7000-8000-000000000001', 'Your college', 'Room not set', 'Robot lab', 'UTC',
        'not set', 'not set', 'not set');
