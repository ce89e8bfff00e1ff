create table signoff_waivers (
    id uuid not null,
    booking_id uuid not null,
    answer_id uuid not null,
    -- the checks that it sets aside, by their names in answers
    checks varchar(400) not null,
    reason varchar(1000) not null,
    given_by uuid not null,
    given_at timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    -- set by the start of the one run that it is for
    used_at timestamp with time zone,
    release_id uuid,
    constraint signoff_waivers_pk primary key (id),
    constraint signoff_waivers_answer_fk foreign key (answer_id) references check_answers (id),
    constraint signoff_waivers_release_fk foreign key (release_id) references signoff_releases (id),
    constraint signoff_waivers_release_uq unique (release_id),
    constraint signoff_waivers_expiry_ck check (given_at < expires_at),
    constraint signoff_waivers_used_ck check (
        (used_at is null and release_id is null)
        or (used_at is not null and release_id is not null and used_at < expires_at)),
    constraint signoff_waivers_never_ck check (checks not like '%power-mode%')
);

create index signoff_waivers_booking_ix on signoff_waivers (booking_id, given_at);
