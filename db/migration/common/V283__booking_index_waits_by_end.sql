-- every few seconds the waits that are past are looked for; those that ended long ago are not read for it
create index booking_waits_open_ix on booking_waits (ended_at, until_at);
