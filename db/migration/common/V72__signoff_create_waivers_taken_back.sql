-- made before the table of waivers, which therefore cannot be named here; written under the lock of the waiver's booking
create table signoff_waivers_taken_back (
    waiver_id uuid not null,
    taken_by uuid not null,
    taken_at timestamp with time zone not null,
    reason varchar(1000) not null,
    constraint signoff_waivers_taken_back_pk primary key (waiver_id)
);
