create index incidents_run_ix on incidents (run_id);
