-- the week's exceptions, the lab's own step times, what nobody used, what ran since: none of them reads years of releases
create index signoff_releases_issued_ix on signoff_releases (issued_at);
create index signoff_releases_live_ix on signoff_releases (live, start_by);
create index signoff_releases_through_ix on signoff_releases (cell_id, run_through_at);
