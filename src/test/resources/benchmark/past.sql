-- What each planted turn left behind, each statement for the turns between :after and :until of past_turns.
insert into bookings (id, lab_id, cell_id, starts_at, ends_at, operator_id, attendant_id, course_id, assignment_id,
    revision_id, state, checked_in_at, started_at, outside_quota, made_by, made_at, changed_at, version)
select t.booking, t.lab, t.cell, t.starts_at, t.ends_at, t.operator, t.attendant, t.course, t.assignment,
    case when t.ran then t.revision end, t.state, case when t.ran then t.starts_at end,
    case when t.ran then t.starts_at + interval '9' minute end, false, t.operator, t.starts_at - interval '50' hour,
    t.ends_at, 6
from past_turns t where t.n > :after and t.n <= :until;

insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at)
select cast('000000c1-0000-7000-8000-' || t.digits as uuid), t.booking, 'CELL', t.cell, t.starts_at, t.ends_at
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at)
select cast('000000c2-0000-7000-8000-' || t.digits as uuid), t.booking, 'OPERATOR', t.operator, t.starts_at, t.ends_at
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at)
select cast('000000c3-0000-7000-8000-' || t.digits as uuid), t.booking, 'ATTENDANT', t.attendant, t.starts_at, t.ends_at
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into booking_reminders (booking_id, hours, reminded_at)
select t.booking, 24, t.starts_at - interval '24' hour
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into signoff_preparations (id, booking_id, revision_id, cell_id, cell_version, answer_id, within_limits, checked_at)
select cast('000000c4-0000-7000-8000-' || t.digits as uuid), t.booking, t.revision, t.cell, t.cell_version, t.answer,
    true, t.starts_at - interval '40' hour
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into signoff_sheets (id, booking_id, cell_id, round_number, list, brief, revision_id, cell_version, answer_id,
    operator_id, attendant_id, opened_at, closed_at, outcome, because)
select cast('000000c5-0000-7000-8000-' || t.digits as uuid), t.booking, t.cell, 1, 'session', false, t.revision,
    t.cell_version, t.answer, t.operator, t.attendant, t.starts_at, t.starts_at + interval '4' minute, 'DONE', ''
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into signoff_sheets (id, booking_id, cell_id, round_number, list, brief, revision_id, cell_version, answer_id,
    operator_id, attendant_id, opened_at, closed_at, outcome, because)
select cast('000000c6-0000-7000-8000-' || t.digits as uuid), t.booking, t.cell, 2, 'bench', false, t.revision,
    t.cell_version, t.answer, t.operator, t.attendant, t.starts_at + interval '4' minute,
    t.starts_at + interval '8' minute, 'DONE', ''
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into signoff_signatures (id, sheet_id, part, signer, printed_name, signed_at, meaning, statement, statement_sha256,
    method, agreed)
select cast('000000c' || p.kind || '-0000-7000-8000-' || t.digits as uuid),
    cast('000000c' || p.list || '-0000-7000-8000-' || t.digits as uuid), p.part,
    case p.part when 'operator' then t.operator when 'attendant' then t.attendant else t.releaser end, 'Planted Person',
    t.starts_at + p.after_start, 'what the list says is so', 'what was signed, word for word: ' || repeat('so it is; ', 25),
    repeat('a', 64), 'SIGNING_PIN', true
from past_turns t cross join (values ('7', '5', 'operator', interval '2' minute), ('8', '5', 'attendant', interval '3' minute),
    ('9', '6', 'operator', interval '5' minute), ('a', '6', 'attendant', interval '6' minute),
    ('b', '6', 'releaser', interval '8' minute)) p (kind, list, part, after_start)
where t.ran and t.n > :after and t.n <= :until;

insert into signoff_first_answers (sheet_id, account_id, answered_at)
select cast('000000c6-0000-7000-8000-' || t.digits as uuid), t.releaser, t.starts_at + interval '7' minute
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into signoff_releases (id, booking_id, sheet_id, cell_id, cell_version, revision_id, program_sha256,
    declaration_sha256, tool, payload_kg, operator_id, attendant_id, releaser_id, code, first_run, pass_limit, issued_at,
    start_by, window_end, used_at, run_through_at, ended_at)
select cast('000000d0-0000-7000-8000-' || t.digits as uuid), t.booking,
    cast('000000c6-0000-7000-8000-' || t.digits as uuid), t.cell, t.cell_version, t.revision, repeat('b', 64),
    repeat('c', 64), 'G-02', 0.1, t.operator, t.attendant, t.releaser, 'a1b2', false, null,
    t.starts_at + interval '8' minute, t.starts_at + interval '18' minute, t.ends_at, t.starts_at + interval '9' minute,
    t.starts_at + interval '20' minute, t.starts_at + interval '20' minute
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into runs (id, booking_id, cell_id, cell_version, revision_id, state, started_at, lab_date, ended_at, closed_out_at,
    passes, stops, version)
select cast('000000d1-0000-7000-8000-' || t.digits as uuid), t.booking, t.cell, t.cell_version, t.revision, 'CLOSED_OUT',
    t.starts_at + interval '9' minute, cast(t.starts_at as date), t.starts_at + interval '20' minute,
    t.starts_at + interval '25' minute, 3, case when mod(t.n, 17) = 0 then 1 else 0 end, 8
from past_turns t where t.ran and t.n > :after and t.n <= :until;

insert into run_people (run_id, person_id, part, started_at)
select cast('000000d1-0000-7000-8000-' || t.digits as uuid),
    case p.part when 'operator' then t.operator when 'attendant' then t.attendant else t.releaser end, p.part,
    t.starts_at + interval '9' minute
from past_turns t cross join (values ('operator'), ('attendant'), ('releaser')) p (part)
where t.ran and t.n > :after and t.n <= :until;

insert into run_events (id, cell_id, booking_id, run_id, release_id, kind, item, answer, words, account_id, happened_at)
select cast('000000d' || p.kind || '-0000-7000-8000-' || t.digits as uuid), t.cell, t.booking,
    cast('000000d1-0000-7000-8000-' || t.digits as uuid), cast('000000d0-0000-7000-8000-' || t.digits as uuid), p.what,
    cast(p.item as integer), p.answer, '', t.releaser, t.starts_at + p.after_start
from past_turns t cross join (values ('2', 'STARTED', null, '', interval '9' minute),
    ('3', 'PASS', null, '', interval '12' minute), ('4', 'FINISHED', null, '', interval '20' minute),
    ('5', 'CLOSE_OUT', 1, 'disabled', interval '21' minute), ('6', 'CLOSE_OUT', 2, 'out', interval '22' minute))
    p (kind, what, item, answer, after_start)
where t.ran and t.n > :after and t.n <= :until;

insert into run_events (id, cell_id, booking_id, run_id, release_id, kind, item, answer, words, account_id, happened_at)
select cast('000000d7-0000-7000-8000-' || t.digits as uuid), t.cell, t.booking,
    cast('000000d1-0000-7000-8000-' || t.digits as uuid), cast('000000d0-0000-7000-8000-' || t.digits as uuid),
    'E_STOP_PRESS', null, '', '', t.attendant, t.starts_at + interval '11' minute
from past_turns t where t.ran and mod(t.n, 17) = 0 and t.n > :after and t.n <= :until;

insert into booking_waits (id, lab_id, person_id, cell_id, course_id, assignment_id, from_at, until_at, goes_first, passes,
    joined_at, ended_at, ended_how)
select cast('000000d9-0000-7000-8000-' || t.digits as uuid), t.lab, t.operator, t.cell, t.course, t.assignment,
    t.starts_at, t.ends_at, false, 0, t.starts_at - interval '60' hour, t.starts_at - interval '50' hour, 'BOOKED'
from past_turns t where mod(t.n, 10) = 0 and t.n > :after and t.n <= :until;

insert into booking_offers (id, wait_id, person_id, cell_id, starts_at, ends_at, made_at, until_at, state, decided_at)
select cast('000000da-0000-7000-8000-' || t.digits as uuid), cast('000000d9-0000-7000-8000-' || t.digits as uuid),
    t.operator, t.cell, t.starts_at, t.ends_at, t.starts_at - interval '51' hour, t.starts_at - interval '50' hour,
    'TAKEN', t.starts_at - interval '50' hour
from past_turns t where mod(t.n, 10) = 0 and t.n > :after and t.n <= :until;

insert into messages (id, lab_id, person_id, kind, subject, body, href, once_key, created_at, read_at, mail_state,
    mail_until, attempts, next_try_at, sent_at)
select cast('000000d8-0000-7000-8000-' || t.digits as uuid), t.lab, t.operator, 'reminder', 'Your slot is tomorrow',
    'Bring your program.', '/bookings/' || cast(t.booking as varchar(36)), 'reminder-' || t.digits,
    t.starts_at - interval '24' hour, t.starts_at - interval '20' hour, 'SENT', t.starts_at, 1,
    t.starts_at - interval '24' hour, t.starts_at - interval '24' hour
from past_turns t where t.n > :after and t.n <= :until;

insert into trail_entries (lab, sequence, at, kind, subject, actor, words, facts, previous_hash, hash)
select t.lab, cast(:head as bigint) + (t.n - 1) * 4 + p.number, t.starts_at + p.after_start, p.kind, cast(t.booking as varchar(36)),
    case when p.number < 3 then t.operator else t.releaser end, 'Planted: ' || p.kind,
    '{"booking":"' || cast(t.booking as varchar(36)) || '","cell":"' || cast(t.cell as varchar(36)) || '","operator":"'
    || cast(t.operator as varchar(36)) || '"}', repeat('d', 64), repeat('e', 64)
from past_turns t cross join (values (1, 'booking.made', interval '0' minute),
    (2, 'booking.checked-in', interval '1' minute), (3, 'signoff.released', interval '8' minute),
    (4, 'run.closed-out', interval '25' minute)) p (number, kind, after_start)
where t.n > :after and t.n <= :until
