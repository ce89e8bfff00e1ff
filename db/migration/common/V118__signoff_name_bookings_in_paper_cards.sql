-- which booking a card from paper was written for; null for a run nobody had booked
alter table signoff_paper_cards add column booking_id uuid;

alter table signoff_paper_cards add constraint signoff_paper_cards_booking_fk
    foreign key (booking_id) references bookings (id);

create index signoff_paper_cards_booking_ix on signoff_paper_cards (booking_id, written_at);
