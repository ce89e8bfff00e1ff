alter table people add column closed_at timestamp with time zone;

-- the name was replaced by a pseudonym; such an account is never opened again
alter table people add column pseudonym_since timestamp with time zone;

-- when an account was closed is not known from before: its clock starts now
update people set closed_at = current_timestamp where not active;

alter table people add constraint people_closed_ck check (active or closed_at is not null);

alter table people add constraint people_pseudonym_ck check (pseudonym_since is null or not active);

create index people_closed_ix on people (closed_at);
