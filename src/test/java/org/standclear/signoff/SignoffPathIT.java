package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.BookingState;
import org.standclear.platform.digest.Sha256;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** From a booking without a program to a release, and what is kept of it. */
class SignoffPathIT {

    abstract static class Cases extends BenchCases {

        @Test
        void goesFromBookedToReleased() {
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            scene().attached();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);

            scene().answerAndSign(Part.OPERATOR, scene().noor);
            assertThat(scene().now().checkedInAt()).isNotNull();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().state()).isEqualTo(BookingState.READY);

            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            Release release = scene().releasedBy(scene().adaeze);

            assertThat(scene().state()).isEqualTo(BookingState.RELEASED);
            assertThat(release.code()).matches("[ACDEFGHJKMNPQRTWXY34679]{4}");
            assertThat(release.programSha256()).isEqualTo(scene().revision().sha256());
            assertThat(release.declarationSha256()).isEqualTo(scene().revision().declarationSha256());
            assertThat(release.cellVersion()).isEqualTo(1);
            assertThat(release.tool()).isEqualTo("G-02");
            assertThat(release.payloadKg()).isEqualTo(0.48);
            assertThat(release.operator()).isEqualTo(scene().noor.id());
            assertThat(release.attendant()).isEqualTo(scene().mateo.id());
            assertThat(release.releaser()).isEqualTo(scene().adaeze.id());
            assertThat(release.startBy()).isEqualTo(clock.instant().plus(Duration.ofMinutes(10)));
            assertThat(release.windowEnd()).isEqualTo(scene().now().end());
            assertThat(release.firstRun()).isTrue();
            assertThat(release.passLimit()).isEqualTo(5);
            assertThat(record())
                    .containsSubsequence(
                            "signoff.program-attached",
                            "signoff.checked",
                            "signoff.signed",
                            "signoff.signed",
                            "signoff.ready",
                            "signoff.signed",
                            "signoff.signed",
                            "signoff.signed",
                            "signoff.released");
        }

        @Test
        void releasesNoLongerThanTheSlot() {
            scene().ready();
            clock.moveTo(scene().now().end().minusSeconds(240));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().releasedBy(scene().adaeze).startBy())
                    .isEqualTo(scene().now().end());
        }

        @Test
        void keepsWhatWasSignedWordForWord() {
            Release release = scene().released();
            Sheet bench = signed.sheets(scene().booking).stream()
                    .filter(sheet -> sheet.id().equals(release.sheet()))
                    .findFirst()
                    .orElseThrow();

            assertThat(bench.signatures()).hasSize(3).allSatisfy(signature -> {
                assertThat(signature.statementSha256()).isEqualTo(Sha256.of(signature.statement()));
                assertThat(signature.statement())
                        .contains(scene().revision().sha256())
                        .contains("version 1")
                        .contains("Noor Candlewick")
                        .contains("Mateo Ironbark");
                assertThat(signature.method()).isEqualTo(Signature.Method.OWN_SIGN_IN);
                assertThat(signature.agreed()).isTrue();
            });
            assertThat(bench.signatures())
                    .extracting(Signature::printedName)
                    .containsExactly("Noor Candlewick", "Mateo Ironbark", "Adaeze Lanternby");
            assertThat(bench.signedBy(Part.OPERATOR).orElseThrow().statement())
                    .contains("2. Power mode and override on the display? reduced, 50 %");
        }

        @Test
        void letsNobodyChangeWhatWasSigned() {
            scene().released();
            for (String change : new String[] {
                "update signoff_signatures set statement = 'other'",
                "delete from signoff_signatures",
                "update signoff_answers set answer = '60'",
                "delete from signoff_answers",
                "delete from signoff_releases",
                "delete from signoff_sheets",
                "update signoff_preparations set within_limits = true"
            }) {
                assertThatThrownBy(() -> jdbc.sql(change).update())
                        .as(change)
                        .isInstanceOf(DataAccessException.class)
                        .hasMessageContaining("never changed or deleted");
            }
        }

        @Test
        void takesPinsOnTheSharedScreen() {
            scene().attached();
            scene().choosePins(scene().noor);
            scene().answer(Part.OPERATOR, scene().screen, scene().noor);

            Signed.Refused wrong =
                    is(Signed.Refused.class, scene().sign(Part.OPERATOR, scene().screen, scene().noor, "000111"));
            assertThat(wrong.field()).isEqualTo("pin");
            assertThat(wrong.obstacles().get(0).says()).startsWith("That is not the signing PIN of Noor Candlewick");

            Signed.Kept kept =
                    is(Signed.Kept.class, scene().sign(Part.OPERATOR, scene().screen, scene().noor, BenchScene.PIN));
            assertThat(kept.signature().method()).isEqualTo(Signature.Method.SIGNING_PIN);
            assertThat(kept.signature().printedName()).isEqualTo("Noor Candlewick");

            scene().answer(Part.ATTENDANT, scene().screen, scene().mateo);
            Signed.Refused unset = is(
                    Signed.Refused.class, scene().sign(Part.ATTENDANT, scene().screen, scene().mateo, BenchScene.PIN));
            assertThat(unset.obstacles().get(0).says()).contains("has no signing PIN yet");
        }

        @Test
        void letsEachSignAsThemselvesOnly() {
            scene().attached();
            Entered.Refused entered =
                    is(Entered.Refused.class, scene().enter(Part.ATTENDANT, scene().noor, 1, Map.of("other", "Noor")));
            assertThat(entered.says()).isEqualTo("This part is Mateo Ironbark's to sign.");

            scene().answer(Part.OPERATOR, scene().noor, scene().noor);
            Signed.Refused signed =
                    is(Signed.Refused.class, scene().sign(Part.OPERATOR, scene().noor, scene().mateo, null));
            assertThat(signed.obstacles().get(0).says()).isEqualTo("Each person signs as themselves.");
        }

        @Test
        void keepsTheOrderOfTheBenchList() {
            scene().ready();
            assertThat(scene().enter(Part.ATTENDANT, scene().mateo, 7, Map.of("hand", "on-it")))
                    .isInstanceOf(Entered.MovedOn.class);
            assertThat(scene().enter(Part.RELEASER, scene().adaeze, 8, Map.of("people", "clear")))
                    .isInstanceOf(Entered.MovedOn.class);
        }

        @Test
        void asksAnItemAgainWhenItDisagreesAndKeepsTheDisagreement() {
            scene().ready();
            Entered.Disagrees disagrees = is(
                    Entered.Disagrees.class,
                    scene().enter(Part.OPERATOR, scene().noor, 2, Map.of("power", "reduced", "override", "60")));
            assertThat(disagrees.disagreement().says()).startsWith("Override read: 60 %. Declared: 50 %.");
            assertThat(signed.disagreements(scene().booking)).singleElement().satisfies(kept -> {
                assertThat(kept.expected()).isEqualTo("50 %");
                assertThat(kept.read()).isEqualTo("60 %");
            });
            assertThat(record()).contains("signoff.answer-disagreed");
            SignoffDesk.Step step = scene().desk
                    .step(scene().sheet(), Part.OPERATOR, scene().noor.id());
            assertThat(is(SignoffDesk.Step.Ask.class, step).item().number()).isEqualTo(1);
        }

        @Test
        void doesNotReleaseWhenTwoPeopleReadDifferentValues() {
            scene().awaitsReleaser();
            scene().enter(Part.RELEASER, scene().adaeze, 2, Map.of("power", "reduced", "override", "40"));
            scene().enter(Part.RELEASER, scene().adaeze, 8, Map.of("people", "clear"));
            Signed.NotReleased not = is(Signed.NotReleased.class, scene().sign(Part.RELEASER, scene().adaeze));

            assertThat(not.says())
                    .isEqualTo("Override: operator and releaser read different values. Both read it again.");
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(releases.of(scene().booking)).isEmpty();
            SignoffDesk.Standing standing = scene().desk.look(scene().booking);
            assertThat(standing.notReleased()).isEqualTo(not.says());
            assertThat(standing.sheet().orElseThrow().brief()).isFalse();
            assertThat(standing.sheet().orElseThrow().signatures()).isEmpty();
            assertThat(record()).contains("signoff.not-released").doesNotContain("signoff.released");

            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().releasedBy(scene().hemi)).isNotNull();
        }

        @Test
        void signsOnlyTheStatementThatWasSeen() {
            scene().attached();
            scene().answer(Part.OPERATOR, scene().noor, scene().noor);
            Signed signed = scene().desk
                    .sign(new SignoffDesk.SignPart(
                            scene().sheet().id(),
                            Part.OPERATOR,
                            scene().noor.id(),
                            scene().noor.id(),
                            null,
                            Sha256.of("other")));
            assertThat(signed).isInstanceOf(Signed.MovedOn.class);
            assertThat(scene().sheet().signatures()).isEmpty();
        }

        @Test
        void showsNobodyTheAnswersOfAnother() {
            scene().ready();
            scene().answer(Part.OPERATOR, scene().noor, scene().noor);
            SignoffDesk.Step step = scene().desk
                    .step(scene().sheet(), Part.OPERATOR, scene().screen.id());
            assertThat(is(SignoffDesk.Step.Ask.class, step).item().number()).isEqualTo(1);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
