package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.Instant;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.Role;
import org.standclear.program.SampleProgram;
import org.standclear.signoff.Releases.StartPermission;
import org.standclear.signoff.Waivers.GiveWaiver;
import org.standclear.signoff.Waivers.Given;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** A waiver lets one run of one program go on; it expires, is used up, and never covers the hard items. */
class WaiverIT {

    private static final String REASON = "The peg was weighed at the bench: 60 g.";

    abstract static class Cases extends BenchCases {

        @Autowired
        Waivers waivers;

        @Autowired
        MockMvc mvc;

        private Person instructor() {
            return scene().lab.person("Ines Quarryvale", Role.INSTRUCTOR);
        }

        private Given give(Person by, String reason, Instant expires) {
            return waivers.give(new GiveWaiver(scene().booking, answer().id(), reason, expires, null, by.id()));
        }

        private Waiver given() {
            return is(Given.Kept.class, give(instructor(), REASON, scene().now().end()))
                    .waiver();
        }

        private String refused(Given given) {
            return is(Given.Refused.class, given).says();
        }

        @Test
        void letsOneRunBeReleasedAndIsUsedUpByItsStart() {
            attachWithoutItsPart();
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            Waiver waiver = given();
            assertThat(waiver.checks()).containsExactly("payload");
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);

            Release release = scene().released();
            assertThat(signed.sheets(scene().booking))
                    .flatExtracting(Sheet::signatures)
                    .isNotEmpty()
                    .allSatisfy(signature -> assertThat(signature.statement())
                            .contains("Waived for one run by Ines Quarryvale", "payload", REASON));
            is(
                    StartPermission.Given.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));

            assertThat(waivers.standing(scene().booking)).isEmpty();
            assertThat(waivers.of(scene().booking))
                    .singleElement()
                    .satisfies(used -> assertThat(used.usedAt()).isEqualTo(clock.instant()));
            assertThat(record()).containsSubsequence("signoff.waived", "signoff.released", "signoff.waiver-used");
        }

        @Test
        void isNotGoodForASecondStart() {
            attachWithoutItsPart();
            given();
            Release release = scene().released();
            releases.useForStart(scene().booking, release.code(), scene().noor.id());
            scene().bookings.markRunning(scene().booking, scene().noor.id());
            scene().bookings.markStopped(scene().booking, scene().mateo.id(), "e-stop pressed");
            scene().bookings.readyAfterStop(scene().booking, scene().adaeze.id());

            SignoffDesk.Standing standing = scene().desk.look(scene().booking);
            assertThat(standing.prepared().lapsed())
                    .hasValueSatisfying(lapse -> assertThat(lapse.because())
                            .isEqualTo("The waiver no longer stands: it is used up, taken back or expired."));
            assertThat(standing.obstacles()).extracting(Obstacle::code).contains("not-within-limits");
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }

        @Test
        void expires() {
            attachWithoutItsPart();
            is(Given.Kept.class, give(instructor(), REASON, clock.instant().plusSeconds(300)));
            Release release = scene().released();
            assertThat(release.startBy()).isEqualTo(clock.instant().plusSeconds(300));
            clock.moveBy(Duration.ofSeconds(300));

            is(
                    StartPermission.Refused.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));
            assertThat(scene().state()).isNotEqualTo(BookingState.RELEASED);
            scene().desk.look(scene().booking);
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(waivers.standing(scene().booking)).isEmpty();
        }

        @Test
        void doesNotCoverAnotherRevision() {
            attachWithoutItsPart();
            given();
            attach("peg.yaml", SampleProgram.sheet("Peg two").replace("  part-kg: 0.06\n", ""));
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(waivers.standing(scene().booking)).isEmpty();
        }

        @Test
        void neverCoversThePowerMode() {
            attach("peg.yaml", SampleProgram.sheet("Peg").replace("power: reduced", "power: full"));
            assertThat(refused(give(instructor(), REASON, scene().now().end())))
                    .isEqualTo("Never waived: power-mode. Mend the program or its declaration.");
            assertThat(waivers.of(scene().booking)).isEmpty();
        }

        @Test
        void leavesEveryOtherGateShut() {
            attachWithoutItsPart();
            given();
            application
                    .getBean(org.standclear.cell.CellStates.class)
                    .tagOut(scene().cell, scene().adaeze.id(), "cable chafe");
            assertThat(scene().desk.look(scene().booking).obstacles())
                    .extracting(Obstacle::code)
                    .contains("cell-not-in-service")
                    .doesNotContain("not-within-limits");
        }

        @Test
        void isNotGivenForWhatNeedsNone() {
            scene().attached();
            assertThat(refused(give(instructor(), REASON, scene().now().end())))
                    .isEqualTo("The program is within limits: there is nothing to waive.");
        }

        @Test
        void isNotGivenTwice() {
            attachWithoutItsPart();
            given();
            assertThat(refused(give(instructor(), REASON, scene().now().end()))).isEqualTo("A waiver stands already.");
        }

        @Test
        void isGivenByAnotherInstructorThanTheAuthor() {
            attachWithoutItsPart();
            assertThat(refused(give(scene().adaeze, REASON, scene().now().end())))
                    .isEqualTo("Only an instructor gives a waiver.");
            assertThat(refused(give(scene().noor, REASON, scene().now().end())))
                    .isEqualTo("Only an instructor gives a waiver.");
        }

        @Test
        void wantsAReasonAndATimeWithinTheSlot() {
            attachWithoutItsPart();
            Person ines = instructor();
            assertThat(refused(give(ines, "ok", scene().now().end()))).startsWith("Say why this one run may go on");
            assertThat(refused(give(ines, REASON, clock.instant()))).startsWith("That time is past");
            assertThat(refused(give(ines, REASON, scene().now().end().plusSeconds(1))))
                    .startsWith("A waiver is for one run");
        }

        private MockHttpServletResponse send(AbstractMockHttpServletRequestBuilder<?> request, Person by)
                throws Exception {
            return mvc.perform(request.with(Accounts.as(by)).with(csrf()))
                    .andReturn()
                    .getResponse();
        }

        private Document page(MockHttpServletResponse response) throws Exception {
            return Jsoup.parse(response.getContentAsString());
        }

        @Test
        void isGivenOnAPage() throws Exception {
            attachWithoutItsPart();
            Person ines = instructor();
            String path = "/bookings/" + scene().booking + "/waiver";
            Document form = page(send(get(path), ines));
            assertThat(form.text()).contains("Not checkable", "Payload", "Waive it for this one run");

            MockHttpServletResponse refused = send(
                    post(path)
                            .param(
                                    "formToken",
                                    form.select("main input[name=formToken]").val())
                            .param("answer", answer().id().toString())
                            .param("reason", REASON)
                            .param("expires", "25:99"),
                    ines);
            assertThat(refused.getStatus()).isEqualTo(422);
            assertThat(page(refused).text()).contains("Write a time such as 14:30.");
            assertThat(page(refused).select("textarea[name=reason]").text()).isEqualTo(REASON);

            MockHttpServletResponse kept = send(
                    post(path)
                            .param(
                                    "formToken",
                                    page(refused)
                                            .select("main input[name=formToken]")
                                            .val())
                            .param("answer", answer().id().toString())
                            .param("reason", REASON)
                            .param("expires", form.select("input[name=expires]").val()),
                    ines);
            assertThat(kept.getStatus()).as(kept.getContentAsString()).isEqualTo(302);
            assertThat(page(send(get("/bench/" + scene().cell), scene().screen)).text())
                    .contains("Waived for one run by Ines Quarryvale", REASON);
            assertThat(page(send(get(path), ines)).text()).contains("A waiver stands already.");
        }

        @Test
        void isNoPageForStudentsAndNoneForWhatIsNotThere() throws Exception {
            attachWithoutItsPart();
            String path = "/bookings/" + scene().booking + "/waiver";
            assertThat(send(get(path), scene().noor).getStatus()).isEqualTo(403);
            assertThat(send(post(path).param("reason", REASON), scene().noor).getStatus())
                    .isEqualTo(403);
            assertThat(send(post(path).param("reason", REASON), scene().adaeze).getStatus())
                    .isEqualTo(403);
            String nowhere = "/bookings/" + BookingId.next() + "/waiver";
            assertThat(send(get(nowhere), instructor()).getStatus()).isEqualTo(404);
            assertThat(send(post(nowhere).param("reason", REASON), instructor()).getStatus())
                    .isEqualTo(404);
            assertThat(waivers.of(scene().booking)).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
