package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.signoff.Releases.StartPermission;
import org.standclear.signoff.Waivers.Given;
import org.standclear.signoff.Waivers.TakeBack;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A waiver is found from the booking, its answer and the desk, stands on the release card, and can be taken back. */
class WaiverTakenBackIT {

    private static final String REASON = "The peg was weighed at the bench: 60 g.";
    private static final String BACK = "Another peg lies on the bench than was weighed.";

    abstract static class Cases extends WaiverCases {

        private Person ines = new Person(PersonId.next(), "", "", Set.of(), true);

        /** Not checkable: nobody declared what the part weighs. */
        @BeforeEach
        void aProgramWithoutItsPart() {
            ines = scene().lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            attachWithoutItsPart();
        }

        private Waiver given() {
            return waived(REASON, ines.id());
        }

        private Given takeBack(Waiver waiver, String reason, Person by) {
            return waivers.takeBack(new TakeBack(scene().booking, waiver.id(), reason, by.id()));
        }

        private String refused(Given given) {
            return is(Given.Refused.class, given).says();
        }

        @Test
        void leavesTheProgramAsTheCheckAnswered() {
            Waiver waiver = given();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);

            Waiver back = is(Given.Kept.class, takeBack(waiver, BACK, ines)).waiver();

            assertThat(back.takenBack()).isEqualTo(new Waiver.TakenBack(ines.id(), clock.instant(), BACK));
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(waivers.standing(scene().booking)).isEmpty();
            assertThat(record()).containsSubsequence("signoff.waived", "signoff.waiver-taken-back");
            assertThat(scene().desk.look(scene().booking).obstacles())
                    .extracting(Obstacle::code)
                    .contains("not-within-limits");
            assertThat(given().id()).as("it can be given anew").isNotEqualTo(waiver.id());
        }

        @Test
        void lapsesTheReleaseThatRestsOnIt() {
            Waiver waiver = given();
            Release release = scene().released();
            Person another = scene().lab.person("Tomasz Fennimore-Ash", Role.INSTRUCTOR);

            is(Given.Kept.class, takeBack(waiver, BACK, another));

            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(Objects.requireNonNull(
                            releases.latest(scene().booking).orElseThrow().lapsed()))
                    .satisfies(lapsed -> {
                        assertThat(lapsed.rule()).isEqualTo(LapseRule.WAIVER_TAKEN_BACK);
                        assertThat(lapsed.because()).contains(BACK);
                    });
            StartPermission start = releases.useForStart(
                    scene().booking, release.code(), scene().noor.id());
            assertThat(is(StartPermission.Refused.class, start).says()).contains("The waiver was taken back", BACK);
        }

        @Test
        void isRefusedWhenThereIsNothingToTakeBack() {
            Waiver waiver = given();
            assertThat(refused(takeBack(waiver, BACK, scene().adaeze))).startsWith("Only an instructor");
            assertThat(refused(takeBack(waiver, "oops", ines))).startsWith("Say why it is taken back");
            assertThat(refused(waivers.takeBack(new TakeBack(scene().booking, UUID.randomUUID(), BACK, ines.id()))))
                    .isEqualTo("This booking has no such waiver.");
            is(Given.Kept.class, takeBack(waiver, BACK, ines));
            assertThat(refused(takeBack(waiver, BACK, ines))).isEqualTo("It was taken back already.");
            Waiver second = given();
            clock.moveBy(Duration.ofMinutes(40));
            assertThat(refused(takeBack(second, BACK, ines))).isEqualTo("It has expired already.");
        }

        @Test
        void isUsedUpOnceItsRunHasStarted() {
            Waiver waiver = given();
            Release release = scene().released();
            is(
                    StartPermission.Given.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));
            assertThat(refused(takeBack(waiver, BACK, ines))).startsWith("Its run has been started");
        }

        @Test
        void standsOnTheReleaseCard() throws Exception {
            given();
            scene().released();
            Document bench = page("/bench/" + scene().cell, scene().screen);
            assertThat(bench.text())
                    .contains("Released until", "Not within limits. Waived for one run by Ines Quarryvale", REASON);
        }

        @Test
        void isReachedFromTheBookingItsAnswerAndTheDesk() throws Exception {
            String booking = "/bookings/" + scene().booking;
            String here = "main a[href=" + path() + "]";
            for (String from : new String[] {booking, booking + "/program", "/checks/" + answer().id(), "/desk"}) {
                assertThat(page(from, ines).select(here).text()).as(from).contains("Waive for one run");
            }
            for (String from : new String[] {booking, "/checks/" + answer().id(), "/desk"}) {
                assertThat(page(from, scene().adaeze).select(here)).as(from).isEmpty();
            }
            assertThat(page(booking, scene().noor).select(here)).isEmpty();
            given();
            assertThat(page(booking, ines).select(here).text()).isEqualTo("See the waiver");
            assertThat(page("/checks/" + answer().id(), ines).text())
                    .contains("Bookings that wait for this answer", "Waived for one run by Ines Quarryvale");
            assertThat(page("/checks/" + answer().id(), scene().noor).text())
                    .doesNotContain("Bookings that wait for this answer");
        }

        @Test
        void isTakenBackOnItsPage() throws Exception {
            Waiver waiver = given();
            Document form = page(path(), ines);
            assertThat(form.text()).contains("Take it back before the run");
            MockHttpServletResponse empty = send(back(form, waiver, "no"), ines);
            assertThat(empty.getStatus()).isEqualTo(422);
            Document again = Jsoup.parse(empty.getContentAsString());
            assertThat(again.select(".errors").text()).contains("Say why it is taken back");
            assertThat(again.select("textarea[name=takeBackReason]").text()).isEqualTo("no");

            MockHttpServletResponse done = send(back(again, waiver, BACK), ines);
            assertThat(done.getRedirectedUrl()).isEqualTo(path());
            Document after = page(path(), ines);
            assertThat(after.text()).contains("taken back at", "by Ines Quarryvale", BACK);
            assertThat(after.select("textarea[name=takeBackReason]")).isEmpty();
            assertThat(after.text()).contains("Waive it for this one run");
        }

        private AbstractMockHttpServletRequestBuilder<?> back(Document form, Waiver waiver, String reason) {
            return post(path() + "/take-back")
                    .param(
                            "formToken",
                            form.select("form[action$=take-back] input[name=formToken]")
                                    .val())
                    .param("waiver", waiver.id().toString())
                    .param("takeBackReason", reason);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
