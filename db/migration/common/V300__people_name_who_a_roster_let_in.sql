-- who became a student of the lab by a roster, having an account of another lab, so that taking it back ends that too
alter table roster_effects drop constraint roster_effects_kind_ck;
alter table roster_effects add constraint roster_effects_kind_ck
    check (kind in ('ADDED', 'ENROLLED', 'TAKEN_OUT', 'TEAMED', 'ADDRESSED', 'LET_IN'));
