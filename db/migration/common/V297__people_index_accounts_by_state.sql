-- open accounts by name without passing over the closed ones, and closed ones that still have their name
create index people_active_ix on people (active, sort_name, id);
create index people_named_ix on people (pseudonym_since, closed_at, id);
