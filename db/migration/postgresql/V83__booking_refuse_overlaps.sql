create extension if not exists btree_gist;

alter table booking_claims add constraint booking_claims_no_overlap
    exclude using gist (subject with =, tstzrange(starts_at, ends_at, '[)') with &&);
