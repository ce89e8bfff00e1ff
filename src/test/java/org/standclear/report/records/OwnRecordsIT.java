package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.SecondLab;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.ReporterPart;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.report.OwnRecords;
import org.standclear.report.OwnRecords.Outcome;
import org.standclear.report.OwnRecords.Question;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A person reads what is kept about them, and asks about it. */
class OwnRecordsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        OwnRecords records;

        @Autowired
        RunLog log;

        @Autowired
        Runs runs;

        @Autowired
        IncidentReports reports;

        @Autowired
        Labs labs;

        private List<String> lines(Person person) {
            return records.of(person.id()).stream()
                    .flatMap(section -> section.lines().stream())
                    .toList();
        }

        @Test
        void showsEverybodyTheirOwnLinesOnly() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            assertThat(lines(scene().noor))
                    .anyMatch(line -> line.contains("as operator, 0 passes"))
                    .anyMatch(line -> line.contains("bench list as operator, signed as Noor Candlewick"))
                    .anyMatch(line -> line.contains("induction passed"))
                    .noneMatch(line -> line.contains("Mateo"));
            assertThat(lines(scene().adaeze)).anyMatch(line -> line.contains("as releaser"));
            assertThat(lines(scene().lab.student("Leilani Driftmark")))
                    .allMatch(line ->
                            line.contains("induction") || line.contains("list of") || line.contains("a roster file"));
        }

        @Test
        void saysWhoPrintedARunWithNames() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            records.printed(
                    runs.of(scene().booking).orElseThrow().id(), scene().hemi.id());
            assertThat(lines(scene().mateo)).anyMatch(line -> line.contains("Hemi Coppergate printed the paper"));
            LabId elsewhere = SecondLab.empty(application, "America/St_Johns");
            assertThat(LabScope.in(elsewhere, () -> lines(scene().mateo)))
                    .as("read in another lab")
                    .anyMatch(line -> line.contains("Hemi Coppergate printed the paper")
                            && line.contains(labs.theLab().name()));
        }

        @Test
        void listsWaiversMakeUpsExcusesPaperCardsAndIncidents() {
            scene().released();
            insertPaperCard();
            var id = scene().noor.id().value();
            jdbc.sql("""
                    insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until)
                    values (:id, :lab, :person, :by, :at, :until)""")
                    .param("id", UUID.randomUUID())
                    .param("lab", lab())
                    .param("person", id)
                    .param("by", scene().hemi.id().value())
                    .param("at", now(0))
                    .param("until", now(60))
                    .update();
            jdbc.sql("insert into booking_pleas (booking_id, words, sent_at) values (:id, 'the bus came late', :at)")
                    .param("id", scene().booking.value())
                    .param("at", now(0))
                    .update();
            reports.report(IncidentReports.Report.brief(
                    scene().cell,
                    IncidentClass.NEAR_MISS,
                    "The hand was close.",
                    new IncidentReports.Teller.Named(scene().noor.id(), ReporterPart.SAW_IT)));
            reports.report(IncidentReports.Report.brief(
                    scene().cell, IncidentClass.NEAR_MISS, "Said by nobody.", new IncidentReports.Teller.Anonymous()));

            assertThat(lines(scene().noor))
                    .anyMatch(line -> line.endsWith("as operator, program peg.yaml, ran once"))
                    .anyMatch(line -> line.endsWith("granted by the lab"))
                    .anyMatch(line -> line.endsWith("you wrote: the bus came late, not excused"))
                    .anyMatch(line -> line.endsWith("reported by you: The hand was close."))
                    .noneMatch(line -> line.contains("Said by nobody"));
            assertThat(lines(scene().mateo))
                    .anyMatch(line -> line.contains("as e-stop attendant, program peg.yaml"))
                    .noneMatch(line -> line.contains("the bus"));
        }

        private OffsetDateTime now(int days) {
            return clock.instant().plus(Duration.ofDays(days)).atOffset(ZoneOffset.UTC);
        }

        private UUID lab() {
            return labs.theLab().id().value();
        }

        private void insertPaperCard() {
            jdbc.sql("""
                    insert into signoff_paper_cards (id, lab_id, cell_id, written_at, operator_id, attendant_id, releaser_id,
                        program, fingerprint_end, power, override_percent, sensitivity, tool_code, passes, happened, typed_by,
                        typed_at)
                    values (:id, :lab, :cell, :at, :operator, :attendant, :releaser, 'peg.yaml', 'a41e', 'reduced', 50, 'low',
                        'G-02', '1', 'ran once', :releaser, :at)""")
                    .param("id", UUID.randomUUID())
                    .param("lab", lab())
                    .param("cell", scene().cell.value())
                    .param("at", now(0))
                    .param("operator", scene().noor.id().value())
                    .param("attendant", scene().mateo.id().value())
                    .param("releaser", scene().hemi.id().value())
                    .update();
        }

        @Test
        void asksAboutAnOwnLineAndIsAnsweredBySomebodyElse() {
            scene().released();
            String line = lines(scene().noor).get(0);
            assertThat(records.ask(scene().mateo.id(), line, "not mine")).isInstanceOf(Outcome.Refused.class);
            assertThat(records.ask(scene().noor.id(), line, "I was not there.")).isEqualTo(new Outcome.Kept());
            Question asked = records.questionsOf(scene().noor.id()).get(0);
            assertThat(asked.about()).isEqualTo(line);
            assertThat(records.answer(asked.id(), "My own.", scene().noor.id())).isInstanceOf(Outcome.Refused.class);

            Person ines = scene().lab.person("Tomasz Fennimore-Ash", Role.INSTRUCTOR);
            assertThat(records.answer(asked.id(), "You signed at 10:09.", ines.id()))
                    .isEqualTo(new Outcome.Kept());
            assertThat(records.answer(asked.id(), "Again.", ines.id())).isInstanceOf(Outcome.Refused.class);
            assertThat(Objects.requireNonNull(records.questionsOf(scene().noor.id())
                                    .get(0)
                                    .answer())
                            .words())
                    .isEqualTo("You signed at 10:09.");
            assertThat(records.questionsOf(scene().mateo.id())).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
