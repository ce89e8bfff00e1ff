-- whether a booking of a bulk move went elsewhere than the plan said that was looked at, since that slot was taken meanwhile
alter table booking_bulk_moved add column elsewhere boolean default false not null;
