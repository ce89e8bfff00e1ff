-- a line of a week's exceptions as an instructor read and signed it
create table report_exception_readings (
    id uuid not null,
    lab_id uuid not null,
    week date not null,
    rule varchar(40) not null,
    subject varchar(80) not null,
    words varchar(500) not null,
    remark varchar(1000) not null,
    statement_sha256 varchar(64) not null,
    signed_by uuid not null,
    printed_name varchar(200) not null,
    signed_at timestamp with time zone not null,
    constraint report_exception_readings_pk primary key (id),
    constraint report_exception_readings_lab_fk foreign key (lab_id) references labs (id),
    constraint report_exception_readings_once_uq unique (lab_id, week, rule, subject)
);
