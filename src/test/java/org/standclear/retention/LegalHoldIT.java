package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.IncidentClass;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.HoldMarks;
import org.standclear.platform.retention.RecordKind;
import org.standclear.report.OwnRecords;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.LegalHold.Target;
import org.standclear.signoff.BenchScene;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** What is held, or asked about, stays. */
class LegalHoldIT {

    abstract static class Cases extends RetentionCases {

        @Autowired
        HoldMarks marks;

        @Autowired
        OwnRecords ownRecords;

        private UUID dueMessage() {
            UUID id = told(scene().noor, "a note");
            keepOnly(RecordKind.MESSAGES, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.MESSAGES, id)).isTrue();
            return id;
        }

        @Test
        void keepsBackUntilASecondPersonLiftsIt() {
            UUID message = dueMessage();
            UUID other = told(scene().mateo, "his note");
            longAfter();
            clock.moveBy(aDay().multipliedBy(800));
            UUID hold = hold(new Target.One(About.PERSON, scene().noor.id().value()));
            assertThat(isDue(RecordKind.MESSAGES, message)).isFalse();
            assertThat(isDue(RecordKind.MESSAGES, other)).isTrue();
            assertThat(dueOf(RecordKind.MESSAGES).keptBack()).containsKey("legal hold");
            assertThat(marks.on("PERSON", scene().noor.id())).hasSize(1);
            assertThat(marks.on("PERSON", scene().mateo.id())).isEmpty();

            assertThat(holds.lift(hold, "settled", ines.id())).isPresent();
            assertThat(isDue(RecordKind.MESSAGES, message)).isFalse();
            assertThat(holds.lift(hold, "settled", marit.id())).isEmpty();
            assertThat(holds.lift(hold, "settled again", marit.id())).isPresent();
            assertThat(isDue(RecordKind.MESSAGES, message)).isTrue();
            assertThat(marks.on("PERSON", scene().noor.id())).isEmpty();
            assertThat(kindsAbout(hold)).containsExactly("retention.hold-placed", "retention.hold-lifted");
        }

        private List<String> kindsAbout(UUID subject) {
            return application
                    .getBean(TrailReader.class)
                    .about(everyLab.theLab().id(), subject.toString())
                    .stream()
                    .map(RecordedEntry::kind)
                    .toList();
        }

        @Test
        void countsWhenItIsPlacedAfterTheApproval() {
            UUID message = dueMessage();
            UUID list = approved();
            hold(new Target.One(About.PERSON, scene().noor.id().value()));
            MonthList done = carriedOut(list);
            assertThat(count("messages", "id", message)).isEqualTo(1);
            assertThat(done.kinds())
                    .anySatisfy(kind -> assertThat(kind.because()).contains("legal hold"));
        }

        @Test
        void holdsAKindBetweenTwoDays() {
            UUID message = dueMessage();
            var day = labTime.date(BenchScene.START.plusSeconds(120));
            UUID before = hold(new Target.Span(RecordKind.MESSAGES, null, day.minusDays(1)));
            UUID after = hold(new Target.Span(RecordKind.MESSAGES, day.plusDays(1), null));
            UUID otherKind = hold(new Target.Span(RecordKind.PHOTOS, null, null));
            assertThat(isDue(RecordKind.MESSAGES, message)).isTrue();
            UUID that = hold(new Target.Span(RecordKind.MESSAGES, day, day));
            assertThat(isDue(RecordKind.MESSAGES, message)).isFalse();
            for (UUID one : List.of(before, after, otherKind, that)) {
                assertThat(holds.lift(one, "done", marit.id())).isEmpty();
            }
        }

        @Test
        void holdsTheStoryOfAnIncidentByTheIncidentItsRunAndItsPeople() {
            var run = running();
            IncidentId incident = closedIncident();
            keepOnly(RecordKind.INCIDENTS, KeepingTime.yearsAfterTheYear(5));
            longAfter();
            assertThat(isDue(RecordKind.INCIDENTS, incident.value())).isTrue();
            for (Target target : List.of(
                    new Target.One(About.INCIDENT, incident.value()),
                    new Target.One(About.RUN, run.id().value()),
                    new Target.One(About.PERSON, scene().hemi.id().value()),
                    new Target.One(About.PERSON, scene().noor.id().value()))) {
                UUID hold = hold(target);
                assertThat(isDue(RecordKind.INCIDENTS, incident.value()))
                        .as("%s", target)
                        .isFalse();
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            }
            assertThat(isDue(RecordKind.INCIDENTS, incident.value())).isTrue();
        }

        @Test
        void keepsTheNamesOfEverybodyInARunThatIsHeld() {
            var run = running();
            closeAccount(scene().mateo);
            keepOnly(RecordKind.ACCOUNTS, KeepingTime.years(1));
            longAfter();
            UUID mateo = scene().mateo.id().value();
            assertThat(isDue(RecordKind.ACCOUNTS, mateo)).isTrue();
            UUID hold = hold(new Target.One(About.RUN, run.id().value()));
            assertThat(isDue(RecordKind.ACCOUNTS, mateo)).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            assertThat(isDue(RecordKind.ACCOUNTS, mateo)).isTrue();
        }

        @Test
        void keepsEverythingOfWhoWaitsForAnAnswer() {
            UUID message = dueMessage();
            String line = ownRecords.of(scene().noor.id()).stream()
                    .flatMap(section -> section.lines().stream())
                    .findFirst()
                    .orElseThrow();
            assertThat(ownRecords.ask(scene().noor.id(), line, "Why?")).isEqualTo(new OwnRecords.Outcome.Kept());
            assertThat(isDue(RecordKind.MESSAGES, message)).isFalse();
            UUID question = ownRecords.questionsOf(scene().noor.id()).get(0).id();
            ownRecords.answer(question, "Because.", ines.id());
            assertThat(isDue(RecordKind.MESSAGES, message)).isTrue();
        }

        @Test
        void keepsTheNameOfWhoIsInAnOpenIncident() {
            running();
            reported(IncidentClass.NEAR_MISS);
            closeAccount(scene().hemi);
            closeAccount(scene().screen);
            keepOnly(RecordKind.ACCOUNTS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.ACCOUNTS, scene().hemi.id().value())).isFalse();
            assertThat(isDue(RecordKind.ACCOUNTS, scene().screen.id().value())).isTrue();
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
