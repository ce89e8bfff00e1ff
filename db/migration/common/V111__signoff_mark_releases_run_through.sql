alter table signoff_releases add column run_through_at timestamp with time zone;

-- a release that ended without a lapse was used by a run that was finished
update signoff_releases set run_through_at = used_at where used_at is not null and lapsed_at is null and live is null;
