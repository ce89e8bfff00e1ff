-- a week or a term of a lab is asked for cell by cell, each by time: H2 prefers "equal" to any span, and read all of a cell
create index signoff_releases_cell_issued_ix on signoff_releases (cell_id, issued_at);
create index signoff_releases_cell_used_ix on signoff_releases (cell_id, used_at);
create index signoff_sheets_cell_closed_ix on signoff_sheets (cell_id, closed_at);
-- what belongs to a booking is found by its own time, and its booking afterwards
create index signoff_lapses_lapsed_ix on signoff_lapses (lapsed_at);
create index signoff_disagreements_answered_ix on signoff_disagreements (answered_at);
create index signoff_waivers_given_ix on signoff_waivers (given_at);
create index signoff_waivers_used_ix on signoff_waivers (used_at);
