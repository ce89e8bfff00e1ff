-- minutes that went into a make-up name the booking for which it was given; they are spent once
alter table run_credits add column spent_for uuid;

alter table run_credits add constraint run_credits_spent_fk foreign key (spent_for) references bookings (id);
