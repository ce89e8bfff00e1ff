-- H2 has no index of some rows only, and follows "is null" in order; only the name is that of the other engine
alter index authorisations_over_ix rename to authorisations_due_ix;
