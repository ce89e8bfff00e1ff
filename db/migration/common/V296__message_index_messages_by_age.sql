-- those whose time is over, earliest first, without a look at all the others
create index messages_created_ix on messages (created_at, id);
