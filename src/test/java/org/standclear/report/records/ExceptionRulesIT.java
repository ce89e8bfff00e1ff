package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.IncidentClass;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.program.ProgramUploads;
import org.standclear.program.SampleProgram;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.PaperCards.PaperCard;
import org.standclear.signoff.Release;
import org.standclear.signoff.Waivers;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What single rules of the week's exceptions find, and when; tests share the week, so they look for their own rows. */
class ExceptionRulesIT {

    abstract static class Cases extends ExceptionCases {

        @Autowired
        Waivers waivers;

        @Autowired
        ProgramUploads uploads;

        @Autowired
        PaperCards cards;

        /** The file says 40 %, its declaration 50 %; the bench reads what is declared. */
        private void attachWhatDiffers() {
            String sheet = SampleProgram.sheet("Peg").replace("override-percent: 50", "override-percent: 40");
            String declared =
                    "power: reduced\noverride-percent: 50\nmax-tool-speed-mm-s: 200\ntool: G-02\npart-kg: 0.06\nloop: 5\n";
            var uploaded = is(
                    ProgramUploads.Uploaded.class,
                    uploads.upload(new ProgramUploads.UploadProgram(
                            scene().noor.id(),
                            null,
                            null,
                            "peg.yaml",
                            sheet.getBytes(StandardCharsets.UTF_8),
                            declared)));
            scene().preparation
                    .attach(
                            scene().booking,
                            uploaded.revision().id(),
                            scene().noor.id());
        }

        @Test
        void findsARunThatWentByWhatWasDeclaredAndNotByWhatWasFound() {
            attachWhatDiffers();
            var answer = Objects.requireNonNull(
                            scene().preparation.look(scene().booking).answer())
                    .id();
            Waivers.Given given = waivers.give(new Waivers.GiveWaiver(
                    scene().booking,
                    answer,
                    "The display was read twice: 50 %.",
                    scene().now().end(),
                    null,
                    ines.id()));
            assertThat(is(Waivers.Given.Kept.class, given).waiver().checks()).contains("declared-matches-found");
            Release release = scene().released();
            UUID booking = scene().booking.value();
            assertThat(ids("found-overridden")).as("released, not started").doesNotContain(booking);

            log.start(scene().booking, release.code(), scene().noor.id());

            assertThat(ids("found-overridden")).contains(booking);
            assertThat(found("found-overridden", 2))
                    .extracting(ExceptionRows.Found::id)
                    .doesNotContain(booking);
        }

        @Test
        void findsAPaperCardThatSaysOtherThanTheRecord() {
            PaperCard agrees = card("reduced", "G-02");
            PaperCard fullPower = card("full", "G-02");
            PaperCard otherTool = card("reduced", "V-01");

            assertThat(ids("found-overridden"))
                    .contains(fullPower.id(), otherTool.id())
                    .doesNotContain(agrees.id());
        }

        /** Lists that follow one another on a cell are compared; a different answer ends the row. */
        @Test
        void findsListsInARowThatWereAnsweredAlike() {
            scene().released();
            UUID first = signedList();
            copied(first, 1, "");
            UUID differs = copied(first, 2, "!");
            copied(first, 3, "");
            assertThat(alike(2)).containsExactly(first);
            assertThat(alike(3)).isEmpty();
            assertThat(alike(1)).contains(differs).hasSize(3);
            assertThat(found("signed-alike", 2))
                    .filteredOn(one -> one.id().equals(first))
                    .singleElement()
                    .satisfies(one -> assertThat(one.measure()).isEqualTo(2));
        }

        private List<UUID> alike(int threshold) {
            String booking = "/bookings/" + scene().booking;
            return found("signed-alike", threshold).stream()
                    .filter(one -> one.href().equals(booking))
                    .map(ExceptionRows.Found::id)
                    .toList();
        }

        private PaperCard card(String power, String tool) {
            PaperCard card = new PaperCard(
                    Id.newValue(),
                    scene().cell,
                    null,
                    clock.instant().minusSeconds(60),
                    scene().noor.id(),
                    scene().mateo.id(),
                    scene().adaeze.id(),
                    "Peg and plate, revision 1",
                    "a41e",
                    power,
                    50,
                    "level 3",
                    tool,
                    "5",
                    "five passes, closed out",
                    scene().hemi.id(),
                    clock.instant());
            is(PaperCards.Typed.Kept.class, cards.type(card));
            return card;
        }

        /** The date of an action is a day of the lab, whatever zone the database's session is in. */
        @Test
        void countsDaysOverdueByTheLabsDates() {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            reviewed(id, ControlLevel.ENGINEERING);
            LocalDate due = actions.of(id).get(0).dueOn();
            UUID action = actions.of(id).get(0).id();
            Instant begins = due.plusDays(1).atStartOfDay(labTime.zone()).toInstant();

            clock.moveBy(Duration.between(clock.instant(), begins.minusSeconds(1)));
            assertThat(overdue(action, due)).as("on its day").isEmpty();
            clock.moveBy(Duration.ofSeconds(1));
            assertThat(overdue(action, due)).singleElement().satisfies(one -> {
                assertThat(one.measure()).isEqualTo(1);
                assertThat(labTime.date(one.at())).isEqualTo(due);
            });
            clock.moveBy(Duration.ofDays(3));
            assertThat(overdue(action, due))
                    .singleElement()
                    .satisfies(one -> assertThat(one.measure()).isEqualTo(4));
        }

        private List<ExceptionRows.Found> overdue(UUID action, LocalDate due) {
            LocalDate monday = due.minusDays(due.getDayOfWeek().getValue() - 1L);
            Days days = new Days(
                    lab(),
                    monday.atStartOfDay(labTime.zone()).toInstant(),
                    monday.plusDays(14).atStartOfDay(labTime.zone()).toInstant(),
                    monday,
                    today());
            ExceptionQueries.Query rule = ExceptionQueries.ALL.get(0);
            assertThat(rule.code()).isEqualTo("action-overdue");
            return rows.of(rule, 1, days, clock.instant()).stream()
                    .filter(one -> one.id().equals(action))
                    .toList();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
