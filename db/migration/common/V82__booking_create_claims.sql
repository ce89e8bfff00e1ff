-- what a booking or a closure holds: its cell, its operator, its attendant, from when until when.
-- A claim is deleted when it is given up; the history stays in the bookings.
create table booking_claims (
    id uuid not null,
    booking_id uuid,
    closure_id uuid,
    kind varchar(10) not null,
    subject uuid not null,
    starts_at timestamp with time zone not null,
    ends_at timestamp with time zone not null,
    constraint booking_claims_pk primary key (id),
    constraint booking_claims_booking_fk foreign key (booking_id) references bookings (id),
    constraint booking_claims_closure_fk foreign key (closure_id) references booking_closures (id),
    constraint booking_claims_holder_ck check ((booking_id is null) <> (closure_id is null)),
    constraint booking_claims_kind_ck check (kind in ('CELL', 'OPERATOR', 'ATTENDANT')),
    constraint booking_claims_span_ck check (starts_at < ends_at)
);

create index booking_claims_subject_ix on booking_claims (subject, ends_at);
create index booking_claims_booking_ix on booking_claims (booking_id);
create index booking_claims_closure_ix on booking_claims (closure_id);

-- rows that are only ever locked: who claims a cell or a person locks the row of its bucket first, in ascending order
create table booking_claim_locks (
    bucket integer not null,
    constraint booking_claim_locks_pk primary key (bucket),
    constraint booking_claim_locks_bucket_ck check (bucket between 0 and 999)
);

insert into booking_claim_locks (bucket)
select a.d + 10 * b.d + 100 * c.d
from (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) a (d)
cross join (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) b (d)
cross join (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) c (d);
