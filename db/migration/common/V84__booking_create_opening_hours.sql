create table opening_hours (
    lab_id uuid not null,
    -- ISO 8601: 1 is Monday
    weekday integer not null,
    opens time not null,
    closes time not null,
    constraint opening_hours_pk primary key (lab_id, weekday, opens),
    constraint opening_hours_lab_fk foreign key (lab_id) references labs (id),
    constraint opening_hours_weekday_ck check (weekday between 1 and 7),
    constraint opening_hours_span_ck check (opens < closes)
);

-- a day with hours of its own; no periods means closed all day
create table opening_exceptions (
    lab_id uuid not null,
    lab_date date not null,
    reason varchar(200) not null,
    constraint opening_exceptions_pk primary key (lab_id, lab_date),
    constraint opening_exceptions_lab_fk foreign key (lab_id) references labs (id),
    constraint opening_exceptions_reason_ck check (reason <> '')
);

create table opening_exception_periods (
    lab_id uuid not null,
    lab_date date not null,
    opens time not null,
    closes time not null,
    constraint opening_exception_periods_pk primary key (lab_id, lab_date, opens),
    constraint opening_exception_periods_day_fk foreign key (lab_id, lab_date) references opening_exceptions (lab_id, lab_date),
    constraint opening_exception_periods_span_ck check (opens < closes)
);

insert into opening_hours (lab_id, weekday, opens, closes)
select l.id, w.d, cast('08:00:00' as time), cast('18:00:00' as time)
from labs l cross join (values (1), (2), (3), (4), (5)) w (d);
