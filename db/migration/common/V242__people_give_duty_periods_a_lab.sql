alter table duty_periods add column lab_id uuid default '00000000-0000-7000-8000-000000000001' not null;

alter table duty_periods alter column lab_id drop default;

alter table duty_periods add constraint duty_periods_lab_fk foreign key (lab_id) references labs (id);

create index duty_periods_lab_ix on duty_periods (lab_id, until_at, from_at);
