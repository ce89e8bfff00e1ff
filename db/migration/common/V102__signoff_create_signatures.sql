create table signoff_signatures (
    id uuid not null,
    sheet_id uuid not null,
    part varchar(10) not null,
    signer uuid not null,
    printed_name varchar(200) not null,
    signed_at timestamp with time zone not null,
    meaning varchar(200) not null,
    statement text not null,
    statement_sha256 varchar(64) not null,
    method varchar(20) not null,
    agreed boolean not null,
    constraint signoff_signatures_pk primary key (id),
    constraint signoff_signatures_sheet_fk foreign key (sheet_id) references signoff_sheets (id),
    constraint signoff_signatures_part_uq unique (sheet_id, part),
    constraint signoff_signatures_person_uq unique (sheet_id, signer),
    constraint signoff_signatures_part_ck check (part in ('operator', 'attendant', 'releaser')),
    constraint signoff_signatures_method_ck check (method in ('OWN_SIGN_IN', 'SIGNING_PIN'))
);

create table signoff_answers (
    signature_id uuid not null,
    item integer not null,
    field varchar(20) not null,
    answer varchar(60) not null,
    constraint signoff_answers_pk primary key (signature_id, item, field),
    constraint signoff_answers_signature_fk foreign key (signature_id) references signoff_signatures (id)
);
