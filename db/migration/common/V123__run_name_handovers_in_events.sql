alter table run_events drop constraint run_events_kind_ck;

alter table run_events add constraint run_events_kind_ck check (kind in ('STARTED', 'E_STOP_PRESS', 'PROTECTIVE_STOP',
    'RESET', 'PASS', 'FINISHED', 'CLOSE_OUT', 'CORRECTION', 'HANDOVER', 'WATCHED', 'CREDIT'));
