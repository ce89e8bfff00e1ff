-- those of a term that were given or ended, whoever has left since
create index authorisations_granted_ix on authorisations (duty, granted_at);
create index authorisations_revoked_ix on authorisations (duty, revoked_at);
