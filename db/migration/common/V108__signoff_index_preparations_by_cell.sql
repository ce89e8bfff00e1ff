create index signoff_preparations_cell_ix on signoff_preparations (cell_id, cell_version);
