-- runs of a week that were handed back late, and who was at a cell at an instant, without the years before
create index runs_ended_ix on runs (ended_at);
create index runs_closed_ix on runs (cell_id, closed_out_at);
