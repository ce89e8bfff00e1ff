-- Whoever binds people to a run takes the rows of these people first, in order: so two acts at two cells that bind the same
-- person, as operator here and at an e-stop there, follow one another. Several people may share a row; that costs a moment.
create table signoff_people_locks (
    slot integer not null constraint signoff_people_locks_pk primary key,
    constraint signoff_people_locks_slot_ck check (slot between 0 and 15)
);

insert into signoff_people_locks (slot)
values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9), (10), (11), (12), (13), (14), (15);
