-- effects only: no column says why, and none may be added
create table accommodations (
    id uuid not null,
    person_id uuid not null,
    slot_minutes integer,
    lower_bench boolean not null,
    helper boolean not null,
    set_by uuid not null,
    set_at timestamp with time zone not null,
    ended_by uuid,
    ended_at timestamp with time zone,
    constraint accommodations_pk primary key (id),
    constraint accommodations_person_fk foreign key (person_id) references people (id),
    constraint accommodations_slot_ck check (slot_minutes is null or slot_minutes between 10 and 240),
    constraint accommodations_effect_ck check (slot_minutes is not null or lower_bench or helper),
    constraint accommodations_ended_ck check ((ended_by is null) = (ended_at is null))
);

create index accommodations_person_ix on accommodations (person_id, ended_at);
