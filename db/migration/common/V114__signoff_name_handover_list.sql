alter table signoff_sheets drop constraint signoff_sheets_list_ck;

alter table signoff_sheets add constraint signoff_sheets_list_ck check (list in ('session', 'bench', 'handover'));

alter table signoff_lapses drop constraint signoff_lapses_what_ck;

alter table signoff_lapses add constraint signoff_lapses_what_ck
    check (what in ('check', 'session list', 'bench list', 'short list', 'handover', 'release', 'attendant'));
