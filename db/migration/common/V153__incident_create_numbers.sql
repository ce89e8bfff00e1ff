create table incident_numbers (
    lab_id uuid not null,
    last_number integer not null,
    constraint incident_numbers_pk primary key (lab_id)
);

insert into incident_numbers (lab_id, last_number)
select l.id, coalesce((select max(i.number) from incidents i where i.lab_id = l.id), 0) from labs l;
