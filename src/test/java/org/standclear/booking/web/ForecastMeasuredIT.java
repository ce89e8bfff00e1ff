package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.BenchLog;
import org.standclear.booking.SecondLab;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** The page of a forecast in a lab whose log has one run too few, and one more. The runs are planted, the times known. */
class ForecastMeasuredIT {

    abstract static class Cases extends PageCases {

        private static final Instant LONG_AGO = Instant.parse("2026-01-05T12:00:00Z");

        /** Seconds after the slot's start: ready, first answer, released. The wait of ten minutes is not work. */
        private static final List<Long> STEPS = List.of(300L, 900L, 1080L);

        @Autowired
        ApplicationContext application;

        @Autowired
        CourseRegister courses;

        @Autowired
        BenchLog log;

        @Autowired
        JdbcClient jdbc;

        private SecondLab lab;
        private AssignmentId assignment;

        @BeforeEach
        void aLabOfItsOwn() {
            lab = new SecondLab(application, "America/Halifax");
            assignment = lab.in(() -> {
                CourseId course = done(courses.addCourse(
                        "C" + UUID.randomUUID().toString().substring(0, 8), "Robot Programming", null));
                SectionId section = done(courses.addSection(course, "01", null));
                return done(courses.addAssignment(new NewAssignment(
                        course, "Peg and plate", 2, Map.of(section, Instant.parse("2026-03-19T17:00:00Z")), null)));
            });
        }

        private static <T> T done(Outcome<T> outcome) {
            return ((Outcome.Done<T>) outcome).id();
        }

        private static OffsetDateTime after(Instant start, long seconds) {
            return start.plusSeconds(seconds).atOffset(ZoneOffset.UTC);
        }

        /** A turn that ran, each an hour after the one before. */
        private void aRun(int number) {
            Instant start = LONG_AGO.plus(Duration.ofHours(number));
            Map<String, Object> row = new java.util.HashMap<>(Map.of(
                    "booking",
                    UUID.randomUUID(),
                    "sheet",
                    UUID.randomUUID(),
                    "cell",
                    lab.cell().value(),
                    "lab",
                    lab.id().value(),
                    "operator",
                    lab.person(Role.STUDENT).id().value(),
                    "releaser",
                    lab.person(Role.TECHNICIAN).id().value(),
                    "some",
                    UUID.randomUUID(),
                    "start",
                    after(start, 0),
                    "end",
                    after(start, 1800)));
            row.put("ready", after(start, STEPS.get(0)));
            row.put("began", after(start, STEPS.get(1)));
            row.put("released", after(start, STEPS.get(2)));
            row.put("attendant", UUID.randomUUID());
            plant(row, """
                    insert into bookings (id, lab_id, cell_id, starts_at, ends_at, operator_id, state, checked_in_at,
                        outside_quota, made_by, made_at, version)
                    values (:booking, :lab, :cell, :start, :end, :operator, 'CLOSED_OUT', :start, false, :operator,
                        :start, 1)""");
            plant(row, """
                    insert into signoff_sheets (id, booking_id, cell_id, round_number, list, brief, revision_id,
                        cell_version, answer_id, operator_id, attendant_id, opened_at, closed_at, outcome)
                    values (:sheet, :booking, :cell, 1, 'bench', false, :some, 1, :some, :operator, :attendant, :start,
                        :released, 'DONE')""");
            for (String part : List.of("attendant", "releaser")) {
                row.put("id", UUID.randomUUID());
                row.put("part", part);
                row.put("signer", row.get(part));
                row.put("at", row.get(part.equals("attendant") ? "ready" : "released"));
                plant(row, """
                        insert into signoff_signatures (id, sheet_id, part, signer, printed_name, signed_at, meaning,
                            statement, statement_sha256, method, agreed)
                        values (:id, :sheet, :part, :signer, 'Planted', :at, 'so', 'so', 'so', 'OWN_SIGN_IN', true)""");
            }
            plant(row, """
                    insert into signoff_first_answers (sheet_id, account_id, answered_at)
                    values (:sheet, :releaser, :began)""");
            plant(row, """
                    insert into signoff_releases (id, booking_id, sheet_id, cell_id, cell_version, revision_id,
                        program_sha256, declaration_sha256, tool, operator_id, attendant_id, releaser_id, code,
                        first_run, issued_at, start_by, window_end, used_at, run_through_at, ended_at)
                    values (:id, :booking, :sheet, :cell, 1, :some, 'a', 'b', 'G-02', :operator, :attendant, :releaser,
                        'a1b2', false, :released, :end, :end, :released, :end, :end)""");
        }

        private void aMissedBooking(int number) {
            Instant start = LONG_AGO.plus(Duration.ofHours(number)).plus(Duration.ofMinutes(30));
            plant(
                    Map.of(
                            "booking",
                            UUID.randomUUID(),
                            "lab",
                            lab.id().value(),
                            "cell",
                            lab.cell().value(),
                            "operator",
                            lab.person(Role.STUDENT).id().value(),
                            "start",
                            after(start, 0),
                            "end",
                            after(start, 1800)),
                    """
                    insert into bookings (id, lab_id, cell_id, starts_at, ends_at, operator_id, state, outside_quota,
                        made_by, made_at, version)
                    values (:booking, :lab, :cell, :start, :end, :operator, 'MISSED', false, :operator, :start, 1)""");
        }

        private void plant(Map<String, Object> row, String insert) {
            assertThat(jdbc.sql(insert).params(row).update()).isEqualTo(1);
        }

        private String says() {
            return page(get("/forecast/" + assignment), lab.person(Role.INSTRUCTOR))
                    .select("#waits ~ ul")
                    .text();
        }

        private String busy() {
            return page(get("/forecast/" + assignment), lab.person(Role.INSTRUCTOR))
                    .select("#waits ~ div tbody tr:first-child td:last-child")
                    .text();
        }

        @Test
        void estimatesUntilTheFiftiethRunAndMeasuresFromThenOn() {
            for (int number = 0; number < 44; number++) {
                aRun(number);
            }
            for (int number = 0; number < 5; number++) {
                aMissedBooking(number);
            }
            assertThat(says())
                    .contains("Release work is estimated (2.5 to 7 min) until the log has 50 runs", "it has 44.")
                    .contains("No-shows are assumed (12 %) until 50 bookings of the lab are over; 49 are.");

            aMissedBooking(5);
            assertThat(says())
                    .contains("Release work is estimated", "it has 44.")
                    .contains("No-shows are those of the lab's own last 50 bookings: 6, 12 %; excused ones");

            for (int number = 44; number < 49; number++) {
                aRun(number);
            }
            String estimated = busy();
            assertThat(says()).contains("Release work is estimated", "it has 49.");

            aRun(49);
            assertThat(says())
                    .contains("Set-up is that of the lab's own last 50 runs")
                    .contains("Release work is that of the lab's own last 50 runs, from the technician's first answer")
                    // 6 of 56
                    .contains("No-shows are those of the lab's own last 56 bookings: 6, 11 %");
            assertThat(lab.in(() -> log.releaseWork(400))).hasSize(50).containsOnly(3.0);
            // estimated: mean (2.5 + 3.5 + 7) / 3 = 4.33 min, measured: 3.0
            assertThat(percent(busy())).isLessThan(percent(estimated));
        }

        private static int percent(String text) {
            return Integer.parseInt(text.replace(" %", ""));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
