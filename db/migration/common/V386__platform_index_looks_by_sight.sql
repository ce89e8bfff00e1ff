-- looks at medical parts are kept for another time than all others, which are many
create index platform_looks_sight_ix on platform_looks (sight, seen_at, id);
