alter table signoff_lapses drop constraint signoff_lapses_what_ck;

alter table signoff_lapses add constraint signoff_lapses_what_ck
    check (what in ('check', 'session list', 'bench list', 'short list', 'release'));
