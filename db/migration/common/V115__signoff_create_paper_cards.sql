-- what was written on paper while the program could not be reached, typed in afterwards; it released nothing
create table signoff_paper_cards (
    id uuid not null,
    lab_id uuid not null,
    cell_id uuid not null,
    written_at timestamp with time zone not null,
    operator_id uuid not null,
    attendant_id uuid not null,
    releaser_id uuid not null,
    program varchar(200) not null,
    fingerprint_end varchar(4) not null,
    power varchar(10) not null,
    override_percent double precision not null,
    sensitivity varchar(40) not null,
    tool_code varchar(60) not null,
    passes varchar(20) not null,
    happened varchar(1000) not null,
    typed_by uuid not null,
    typed_at timestamp with time zone not null,
    constraint signoff_paper_cards_pk primary key (id),
    constraint signoff_paper_cards_lab_fk foreign key (lab_id) references labs (id),
    constraint signoff_paper_cards_late_ck check (typed_at >= written_at),
    constraint signoff_paper_cards_power_ck check (power in ('reduced', 'full')),
    constraint signoff_paper_cards_three_people_ck check (
        operator_id <> attendant_id and operator_id <> releaser_id and attendant_id <> releaser_id)
);

create index signoff_paper_cards_lab_ix on signoff_paper_cards (lab_id, written_at);
