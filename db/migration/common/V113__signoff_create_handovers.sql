-- a release is suspended while its e-stop attendant has left, was swapped or is over the turn; another one signs
alter table signoff_releases add column suspended_because varchar(1000);

alter table signoff_releases add column ended_at timestamp with time zone;

alter table signoff_releases add constraint signoff_releases_suspended_ck check (
    suspended_because is null or live is null);

create table signoff_handovers (
    id uuid not null,
    release_id uuid not null,
    booking_id uuid not null,
    from_person uuid not null,
    code varchar(40) not null,
    because varchar(1000) not null,
    left_at timestamp with time zone not null,
    sheet_id uuid,
    to_person uuid,
    signed_at timestamp with time zone,
    constraint signoff_handovers_pk primary key (id),
    constraint signoff_handovers_release_fk foreign key (release_id) references signoff_releases (id),
    constraint signoff_handovers_sheet_fk foreign key (sheet_id) references signoff_sheets (id),
    constraint signoff_handovers_taken_ck check ((to_person is null and signed_at is null and sheet_id is null)
        or (to_person is not null and signed_at is not null and sheet_id is not null)),
    constraint signoff_handovers_two_people_ck check (to_person is null or to_person <> from_person),
    constraint signoff_handovers_order_ck check (signed_at is null or signed_at >= left_at)
);

create index signoff_handovers_release_ix on signoff_handovers (release_id, left_at);
create index signoff_handovers_booking_ix on signoff_handovers (booking_id, left_at);
create index signoff_handovers_sheet_ix on signoff_handovers (sheet_id);
create index signoff_signatures_signer_ix on signoff_signatures (signer, signed_at);
