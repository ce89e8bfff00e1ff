-- somebody's letters leave in the order in which they were written: each claim asks for the oldest that waits for the person
create index messages_waiting_ix on messages (person_id, mail_state, created_at);
