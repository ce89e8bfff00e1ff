-- those whose time is over, earliest first
create index platform_looks_age_ix on platform_looks (seen_at, id);
