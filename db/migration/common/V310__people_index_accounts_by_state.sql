-- the page of open accounts without the closed ones of years before, and the other way round
create index people_active_name_ix on people (active, sort_name, id);
