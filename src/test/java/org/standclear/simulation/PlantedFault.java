package org.standclear.simulation;

import java.util.List;

/**
 * Something that must never be in the database, put there behind the application's back.
 *
 * @param expected what the audit says of it
 */
record PlantedFault(String expected, String sql) {

    /** What the database itself would refuse. */
    static final List<String> GUARDS = List.of(
            "drop trigger signoff_signatures_immutable",
            "drop trigger signoff_answers_immutable",
            "drop trigger signoff_preparations_immutable",
            "drop trigger program_revisions_immutable",
            "drop trigger program_contents_taken_out_only",
            "drop trigger trail_entries_no_change",
            "drop trigger trail_heads_forward_only",
            "drop trigger run_events_words_out_only",
            "drop trigger booking_claims_no_overlap",
            "drop trigger cell_day_tests_immutable",
            "drop trigger cell_versions_immutable",
            "drop trigger signoff_releases_one_way",
            "drop trigger signoff_waivers_words_out_only",
            "alter table signoff_waivers drop constraint signoff_waivers_lines_read_ck",
            "drop trigger cell_duties_done_immutable",
            "drop trigger incident_restarts_words_out_only",
            "drop trigger incident_steps_reworded_only",
            "drop trigger incident_evidence_immutable",
            "drop trigger incident_evidence_pieces_immutable",
            "drop trigger incident_risk_reviews_words_out_only",
            "drop trigger incident_actions_stay",
            "drop trigger signoff_paper_cards_words_out_only",
            "drop trigger incidents_keep_reporters_words",
            "drop trigger cell_tool_readings_immutable",
            "alter table incident_actions drop constraint incident_actions_not_own_check_ck",
            "alter table signoff_paper_cards drop constraint signoff_paper_cards_three_people_ck",
            "alter table signoff_releases drop constraint signoff_releases_three_people_ck",
            "alter table runs drop constraint runs_closed_out_ck");

    private static final String A_RELEASE = "(select min(id) from signoff_releases where used_at is not null)";

    /** One whose e-stop no staff attended. */
    private static final String A_STUDENTS_RELEASE = """
            (select min(r.id) from signoff_releases r where r.used_at is not null and not exists (
                select 1 from person_roles p join signoff_sheets s on s.attendant_id = p.person_id
                where s.id = r.sheet_id and p.role in ('TECHNICIAN', 'INSTRUCTOR')))""";

    private static final String TAG = """
            insert into cell_tags (id, cell_id, kind, reason, placed_by, placed_at)
            select random_uuid(), cell_id, '%s', 'planted', operator_id, timestamp '2026-01-01 00:00:00+00'
            from signoff_releases where id = """;

    static final List<PlantedFault> ALL = List.of(
            of("a booking does not hold what is its", "delete from booking_claims where kind = 'OPERATOR'"),
            of("a booking does not hold what is its", """
            insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at)
            select random_uuid(), booking_id, kind, booking_id, starts_at, ends_at from booking_claims
            where booking_id is not null and kind = 'CELL'"""),
            of("what is over still holds something", "update bookings set state = 'MISSED' where state = 'CLOSED_OUT'"),
            of("what is over still holds something", """
            insert into booking_claims (id, offer_id, kind, subject, starts_at, ends_at) select random_uuid(), id, 'CELL',
            cell_id, starts_at, ends_at from booking_offers where state <> 'OPEN'"""),
            of("a cell kept for staff is not held", "update booking_closures set removed_by = null, removed_at = null"),
            of("a thing of two labs", "update bookings set lab_id = (select max(id) from labs)"),
            of("another lab's record tells of booking", """
            update bookings set lab_id = (select max(id) from labs), cell_id = (select max(id) from cells)"""),
            of("operator not authorised", "update authorisations set lab_id = (select max(id) from labs)"),
            of("releaser not on duty", "update duty_periods set lab_id = (select max(id) from labs)"),
            of("two offers for one wait", """
            insert into booking_offers (id, wait_id, person_id, cell_id, starts_at, ends_at, made_at, until_at, state)
            select random_uuid(), wait_id, person_id, cell_id, starts_at, ends_at, made_at, until_at, 'OPEN'
            from booking_offers cross join (values (1), (2)) twice (n)"""),
            of("an offer to somebody who does not wait", "update booking_offers set person_id = wait_id"),
            of("an offer to somebody who does not wait", """
            update booking_offers set state = 'OPEN', decided_at = null where state = 'TAKEN'"""),
            of("an offer was taken and nothing is booked", """
            update booking_offers set state = 'TAKEN' where state in ('DECLINED', 'EXPIRED')"""),
            of("a wait ended with a booking that nobody offered", """
            update booking_waits set ended_how = 'BOOKED' where ended_how in ('PAST', 'LEFT')"""),
            of("an offer that nobody was told of", "delete from messages where kind = 'offer'"),
            of("an offer holds nothing", """
            update booking_offers set state = 'OPEN', decided_at = null, until_at = timestamp '2030-01-01 00:00:00+00'"""),
            of("moved without a word", "delete from messages where kind in ('booking-moved', 'booking-taken-off')"),
            of("somebody moved in bulk has lost a turn", """
            insert into booking_bulk_moves (id, lab_id, cell_id, moved_by, moved_at, reason)
            select id, lab_id, cell_id, operator_id, made_at, 'planted' from bookings where state = 'CLOSED_OUT';
            insert into booking_bulk_moved (bulk_id, number, was_booking)
            select id, 1, id from bookings where state = 'CLOSED_OUT'"""),
            of("a wait of another move ended with the one undone", """
            insert into booking_bulk_moves (id, lab_id, cell_id, moved_by, moved_at, reason, undone_by, undone_at)
            select id, lab_id, (select min(id) from cells), person_id, joined_at - interval '1' day, 'planted', person_id,
            ended_at from booking_waits where ended_at is not null;
            update booking_waits set goes_first = true, ended_how = 'LEFT' where ended_at is not null"""),
            of("a make-up that is somebody else's", """
            insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until, used_by)
            select random_uuid(), lab_id, id, operator_id, made_at, made_at + interval '9' day, id from bookings"""),
            of("two make-ups for one booking", """
            insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until, used_by)
            select random_uuid(), lab_id, operator_id, operator_id, made_at, made_at + interval '9' day, id from bookings
            cross join (values (1), (2)) twice (n)"""),
            of("a make-up for nothing", """
            insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until, lost_booking)
            select random_uuid(), lab_id, operator_id, operator_id, made_at, made_at + interval '9' day, id from bookings
            where state = 'CANCELLED'"""),
            of("credited with more than the slot", "update run_credits set minutes = 31"),
            of("minutes went into a make-up that is not there", """
            update run_credits set spent_for = booking_id where spent_for is null"""),
            of("more bookings ahead than allowed", """
            update bookings set state = 'BOOKED', outside_quota = false, made_by = operator_id,
            made_at = timestamp '2026-01-01 00:00:00+00'"""),
            of("one person at two cells", """
            update bookings set state = 'RUNNING' where operator_id = (select operator_id from bookings
            group by operator_id order by count(*) desc fetch first 1 row only)"""),
            of("who attended a run released it later", """
            update signoff_releases r set releaser_id = (select max(e.attendant_id) from signoff_releases e
            where e.booking_id = r.booking_id and e.used_at < r.issued_at) where exists (select 1
            from signoff_releases e where e.booking_id = r.booking_id and e.used_at < r.issued_at)"""),
            of("started while suspended", """
            insert into signoff_handovers (id, release_id, booking_id, from_person, code, because, left_at)
            select random_uuid(), id, booking_id, attendant_id, 'attendant-left', 'planted', issued_at
            from signoff_releases where used_at is not null"""),
            of("took the e-stop over without a signature", """
            insert into signoff_handovers (id, release_id, booking_id, from_person, code, because, left_at, sheet_id,
            to_person, signed_at) select random_uuid(), id, booking_id, attendant_id, 'attendant-left', 'planted',
            issued_at, sheet_id, releaser_id, issued_at + interval '1' second from signoff_releases"""),
            of("two runs on one cell", "update bookings set state = 'FINISHED' where state = 'CLOSED_OUT'"),
            of("booking and run disagree", "update runs set state = 'FINISHED' where state = 'CLOSED_OUT'"),
            of("running without a release in use", "update bookings set state = 'RUNNING' where state = 'CLOSED_OUT'"),
            of("released without a release", "update bookings set state = 'RELEASED' where state = 'CLOSED_OUT'"),
            of("claims overlap", """
            update booking_claims set starts_at = timestamp '2026-01-01 00:00:00+00',
            ends_at = timestamp '2026-06-01 00:00:00+00'"""),
            of("a cell's state is not what its tags make of it", "update cells set state = 'HELD', state_reason = 'x'"),
            of("stops of a run are not those of its log", "update runs set stops = 0 where stops > 0"),
            of("released on a cell that is not in service", TAG.formatted("HOLD") + A_RELEASE),
            of("released on a restricted cell with a student", TAG.formatted("RESTRICTION") + A_STUDENTS_RELEASE),
            of("released on a cell that was not tested that day", "delete from cell_day_tests"),
            of("released on a cell that was not closed out", "update runs set closed_out_at = null"),
            of("released on a cell whose stop was not reset", """
            insert into cell_stops (id, cell_id, arm_stopped_itself, logged_by, happened_at)
            select random_uuid(), cell_id, false, operator_id, timestamp '2026-01-01 00:00:00+00'
            from signoff_releases where id = """ + A_RELEASE),
            of("released on another version of the cell", """
            update signoff_releases set cell_version = cell_version + 1"""),
            of("released while an incident keeps the cell", "delete from incident_restarts"),
            // the class of today says nothing of the releases of before
            of("released while an incident keeps the cell", """
            delete from incident_restarts; update incidents set class = 'OBSERVATION'"""),
            of("released with an overdue inspection or review", "delete from cell_duties_done"),
            of("released while a tool is changed", """
            update cell_tool_changes set begun_at = timestamp '2026-01-01 00:00:00+00',
            ended_at = timestamp '2027-01-01 00:00:00+00' where open_mark is null"""),
            of("an incident that holds its cell never held it", "delete from incident_steps where kind = 'CELL_HELD'"),
            of(
                    "an incident whose evidence is not frozen",
                    "delete from incident_evidence_pieces; delete from incident_evidence"),
            of("closed without what closing asks for", "delete from incident_risk_reviews"),
            of("closed without what closing asks for", """
            update incident_causes set struck_by = added_by, struck_at = added_at where branch = 'PEOPLE'"""),
            of("closed without what closing asks for", """
            update incident_actions set done_by = null, done_at = null, done_words = null, check_due_on = null,
            checked_by = null, checked_at = null, effective = null"""),
            of("closed without what closing asks for", """
            update incidents set form_due_at = closed_at, form_done_at = null where state = 'CLOSED'"""),
            of("an action whose owner says that it helped", """
            update incident_actions set checked_by = owner, checked_at = done_at, effective = true
            where done_at is not null"""),
            of("reviewed by somebody who had a part in it", """
            update incidents i set reporter_part = 'IN_IT', receipt_sha256 = null, reporter = (select max(s.taken_by)
            from incident_steps s where s.incident_id = i.id and s.kind = 'REVIEW_TAKEN')"""),
            of("reviewed by somebody who had a part in it", """
            update signoff_releases r set releaser_id = coalesce((select max(s.taken_by) from run_events e
            join incidents i on i.run_id = e.run_id join incident_steps s on s.incident_id = i.id
            where e.release_id = r.id and e.kind = 'STARTED' and e.happened_at <= i.reported_at
            and s.kind = 'REVIEW_TAKEN'), r.releaser_id)"""),
            of("is another list", "update incident_evidence_pieces set words = words || '.' where number = 1"),
            of("is another list", "update incident_evidence set pieces = pieces + 1"),
            of("frozen evidence names other contents", "update program_contents set bytes = X'00'"),
            of("frozen evidence names other contents", "update cell_versions set file = file || ' '"),
            of("steps of incidents are", "update incident_steps set words = words || '.' where kind = 'REPORTED'"),
            of("steps of incidents are", "delete from incident_steps where kind = 'REVIEW_TAKEN'"),
            of("signoff_paper_cards has", "delete from signoff_paper_cards"),
            of("a card from paper of fewer than three people", """
            update signoff_paper_cards set releaser_id = attendant_id"""),
            of("a tool was changed without two who read the same", """
            insert into cell_tool_changes (id, cell_id, tool_id, begun_by, begun_at, ended_at, version)
            select random_uuid(), cell_id, tool_id, begun_by, begun_at, begun_at, 1 from cell_tool_changes"""),
            of("operator not authorised", "update authorisations set valid_until = valid_from + interval '1' second"),
            of("e-stop attendant not authorised", "update authorisations set duty = 'OPERATOR'"),
            of("releaser not on duty", "delete from duty_periods"),
            of("the program on the booking is another one", "delete from signoff_preparations"),
            of("a waiver of lines that nobody said to have read", """
            update signoff_waivers set lines_read = null, checks = 'coverage'"""),
            of("a waiver of lines that nobody said to have read", """
            update signoff_waivers set lines_read = 'I have looked at the lines', checks = 'reach coverage'"""),
            of("the program on the booking is another one", """
            update signoff_waivers set lines_read = null, checks = 'coverage' where used_at is not null"""),
            of("the releaser released their own program", """
            update program_revisions p set author = (select max(r.releaser_id) from signoff_releases r
            where r.revision_id = p.id) where p.id in (select revision_id from signoff_releases)"""),
            of("released without three signatures", """
            update signoff_signatures set agreed = false where part = 'releaser' and agreed"""),
            of("released without a session list", """
            update signoff_sheets set outcome = 'VOID' where list = 'session' and outcome = 'DONE'"""),
            of("started without a release that held", "update signoff_releases set used_at = null"),
            of("a release was used twice", """
            insert into run_events (id, cell_id, booking_id, run_id, release_id, kind, answer, words, account_id, happened_at)
            select random_uuid(), cell_id, booking_id, run_id, release_id, kind, answer, words, account_id, happened_at
            from run_events where kind = 'STARTED'"""),
            of("are not three", "update signoff_releases set releaser_id = operator_id"),
            of("a run without a start", "delete from run_events where kind = 'STARTED'"),
            of("the statement has another hash", "update signoff_signatures set statement = statement || ' '"),
            of("the program file has another hash", "update program_contents set bytes = X'00'"),
            of("does not name  version", "update signoff_sheets set cell_version = cell_version + 70"),
            of("signed by somebody else", "update signoff_signatures set signer = sheet_id where part = 'attendant'"),
            of("answers [", "delete from signoff_answers where item = 2"),
            of("run_events has", "delete from run_events where kind = 'PASS'"),
            of(
                    "the record is not whole at entry 5",
                    "update trail_entries set words = words || '.' where sequence = 5"),
            of("the record is not whole at entry 9", "update trail_entries set actor = lab where sequence = 9"),
            of("the record has entries that no head leads to", "delete from trail_heads"),
            of("the head of the record", "update trail_heads set sequence = sequence - 1"),
            of("the record left it closed out", "update bookings set state = 'BOOKED' where state = 'CLOSED_OUT'"),
            of("went from booked to", """
            update trail_entries set facts = replace(facts, '"state":"checked"', '"state":"booked"')
            where kind like 'booking.%'"""));

    private static PlantedFault of(String expected, String sql) {
        return new PlantedFault(expected, sql);
    }

    @Override
    public String toString() {
        return expected;
    }
}
