-- the clock of the reasons starts with the end, whichever came first; those whose time is over are found without the others
alter table authorisations add column over_at timestamp with time zone
    generated always as (coalesce(revoked_at, valid_until)) stored;
create index authorisations_over_ix on authorisations (reasons_out_at, over_at, id);
