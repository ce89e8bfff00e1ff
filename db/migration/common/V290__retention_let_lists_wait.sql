-- an approved list waits, so that a hold can still be placed and the list be stopped; old ones had no wait
alter table retention_lists add column carry_out_from timestamp with time zone;

update retention_lists set carry_out_from = approved_at;

alter table retention_lists alter column carry_out_from set not null;

alter table retention_lists add column stopped_by uuid;

alter table retention_lists add column stopped_at timestamp with time zone;

alter table retention_lists add column stop_reason varchar(400);

alter table retention_lists add constraint retention_lists_wait_ck check (carry_out_from >= approved_at);

alter table retention_lists add constraint retention_lists_stopped_ck check (
    (stopped_by is null) = (stopped_at is null) and (stopped_by is null) = (stop_reason is null)
    and (stopped_at is null or finished_at is not null));
