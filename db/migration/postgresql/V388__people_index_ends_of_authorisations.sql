-- PostgreSQL takes "is null" for no order: with it in front, all that are over were sorted to name the earliest
drop index authorisations_over_ix;
create index authorisations_due_ix on authorisations (over_at, id) where reasons_out_at is null;
