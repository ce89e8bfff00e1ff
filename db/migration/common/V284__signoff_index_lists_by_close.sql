-- how the lists of a week were signed, and how long releases stood in a term, without the years before
create index signoff_sheets_closed_ix on signoff_sheets (closed_at);
create index signoff_releases_used_ix on signoff_releases (used_at);
