-- who got an address for messages from a roster, so that taking it back takes that back too
alter table roster_effects drop constraint roster_effects_kind_ck;
alter table roster_effects add constraint roster_effects_kind_ck
    check (kind in ('ADDED', 'ENROLLED', 'TAKEN_OUT', 'TEAMED', 'ADDRESSED'));
