create table form_tokens (
    token uuid not null,
    location varchar(400) not null,
    used_at timestamp with time zone not null,
    constraint form_tokens_pk primary key (token)
);

create index form_tokens_used_at_ix on form_tokens (used_at);
