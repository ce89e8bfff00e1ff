-- starts and stops of a term among all events
create index run_events_kind_ix on run_events (kind, happened_at);
