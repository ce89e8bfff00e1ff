-- those of a lab that ended in a week: its cells, each by time
drop index runs_ended_ix;
create index runs_cell_ended_ix on runs (cell_id, ended_at);
