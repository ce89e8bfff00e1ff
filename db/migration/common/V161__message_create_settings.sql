-- no row: no address, so nothing goes by e-mail
create table message_settings (
    person_id uuid not null,
    address varchar(254) not null,
    mail_on boolean not null,
    quiet_from time not null,
    quiet_until time not null,
    constraint message_settings_pk primary key (person_id)
);
