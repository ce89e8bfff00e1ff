-- without it every account that is closed or deleted reads the whole table, once for each line of a roster
create index roster_effects_person_ix on roster_effects (person_id, import_id);
