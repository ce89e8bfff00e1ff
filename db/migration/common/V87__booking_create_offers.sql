-- a slot that is held for one who waits, until an instant
create table booking_offers (
    id uuid not null,
    wait_id uuid not null,
    person_id uuid not null,
    cell_id uuid not null,
    starts_at timestamp with time zone not null,
    ends_at timestamp with time zone not null,
    made_at timestamp with time zone not null,
    until_at timestamp with time zone not null,
    state varchar(20) not null,
    decided_at timestamp with time zone,
    constraint booking_offers_pk primary key (id),
    constraint booking_offers_wait_fk foreign key (wait_id) references booking_waits (id),
    constraint booking_offers_span_ck check (starts_at < ends_at),
    constraint booking_offers_state_ck check (state in ('OPEN', 'TAKEN', 'DECLINED', 'EXPIRED')),
    constraint booking_offers_decided_ck check ((state = 'OPEN') = (decided_at is null))
);

create index booking_offers_wait_ix on booking_offers (wait_id, state);
create index booking_offers_open_ix on booking_offers (state, until_at);

-- an offer claims its cell and its person like a booking, so that the database refuses everything double here too
alter table booking_claims drop constraint booking_claims_holder_ck;

alter table booking_claims add column offer_id uuid;

alter table booking_claims add constraint booking_claims_offer_fk foreign key (offer_id) references booking_offers (id);

alter table booking_claims add constraint booking_claims_holder_ck check (
    (case when booking_id is null then 0 else 1 end) + (case when closure_id is null then 0 else 1 end)
    + (case when offer_id is null then 0 else 1 end) = 1);

create index booking_claims_offer_ix on booking_claims (offer_id);
