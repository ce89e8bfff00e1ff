package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.booking.Turns;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.Person;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Make-ups as staff see, give and withdraw them. It is Wed 11 March 2026, 09:00 UTC. */
class MakeUpPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Turns turns;

        @Autowired
        AccessLog looks;

        @Autowired
        BookingNumbers numbers;

        @Autowired
        MovableClock clock;

        private MockHttpServletResponse act(String path, Person by, String... values) {
            var request = post(path).param("formToken", UUID.randomUUID().toString());
            for (int i = 0; i < values.length; i += 2) {
                request = request.param(values[i], values[i + 1]);
            }
            return send(request, by);
        }

        @Test
        void staffGiveOneWithAReasonAndWithdrawItWithAReason() {
            SampleLab lab = new SampleLab(application);
            Person noor = lab.student("Noor Candlewick");
            Person ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);

            MockHttpServletResponse nobody =
                    act("/book/make-ups", ines, "login", "nobody.at.all", "reason", "the power was away");
            assertThat(nobody.getStatus()).isEqualTo(422);
            assertThat(document(nobody).select("input[name=reason]").val()).isEqualTo("the power was away");
            MockHttpServletResponse unsaid = act("/book/make-ups", ines, "login", noor.login(), "reason", " ");
            assertThat(unsaid.getStatus()).isEqualTo(422);
            assertThat(turns.makeUpsOf(noor.id())).isEmpty();

            location(act("/book/make-ups", ines, "login", noor.login(), "reason", "the power was away"));
            MakeUp given = turns.makeUpsOf(noor.id()).get(0);
            assertThat(given.reason()).isEqualTo("the power was away");
            String line = "li:has(a[href$=" + noor.id() + "/turns])";
            assertThat(page(get("/book/make-ups"), ines).select(line).text())
                    .contains("Noor Candlewick: the power was away", "until Tue 9 Jun", "Withdraw");
            assertThat(page(get("/me/messages"), noor).text())
                    .contains("You have a make-up", "Why: the power was away");
            assertThat(send(get("/book/make-ups"), noor).getStatus()).isEqualTo(403);

            String withdraw = "/book/make-ups/" + given.id() + "/withdraw";
            assertThat(page(get(withdraw), ines).select("h1").text())
                    .isEqualTo("Withdraw the make-up of Noor Candlewick?");
            assertThat(act(withdraw, ines, "reason", "").getStatus()).isEqualTo(422);
            location(act(withdraw, ines, "reason", "given to the wrong person"));
            assertThat(turns.makeUpsOf(noor.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.stands()).isFalse());
            assertThat(page(get("/book/make-ups"), ines).select(line).text())
                    .contains("withdrawn: given to the wrong person")
                    .doesNotContain("Withdraw ");
            assertThat(act(withdraw, ines, "reason", "twice").getStatus()).isEqualTo(422);
            assertThat(send(get("/book/make-ups/" + UUID.randomUUID() + "/withdraw"), ines)
                            .getStatus())
                    .isEqualTo(404);
        }

        private List<String> seen(Person by, Person whose) {
            return looks.latest(by.id(), whose.id(), null, 20).stream()
                    .filter(look -> look.sight() == Sight.TURNS)
                    .map(AccessLog.Look::subject)
                    .toList();
        }

        @Test
        void everyLookAtSomebodysTurnsIsKeptTheOneAfterARefusalToo() {
            SampleLab lab = new SampleLab(application);
            Person noor = lab.student("Noor Candlewick");
            Person ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            Person adaeze = lab.technician("Adaeze Lanternby");
            CellId avocet = lab.cell(7);
            Booking booking = lab.booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            page(get("/bookings/" + booking.id()), ines);
            assertThat(seen(ines, noor)).as("nothing is arranged").isEmpty();

            assertThat(act("/people/" + noor.id() + "/turns/make-up", ines, "reason", "")
                            .getStatus())
                    .isEqualTo(422);
            assertThat(seen(ines, noor)).containsExactly(noor.id().toString());

            application.getBean(Accommodations.class).set(noor.id(), new Accommodation(0, true, false), adaeze.id());
            assertThat(page(get("/bookings/" + booking.id()), ines).text()).contains("lower bench");
            assertThat(page(get("/bookings/" + booking.id()), noor).text()).contains("lower bench");
            assertThat(seen(ines, noor))
                    .containsExactlyInAnyOrder(
                            noor.id().toString(), booking.id().toString());
            assertThat(seen(noor, noor)).isEmpty();

            turns.giveMakeUp(noor.id(), "the power was away", ines.id());
            UUID given = turns.makeUpsOf(noor.id()).get(0).id();
            assertThat(act("/book/make-ups", adaeze, "login", noor.login(), "reason", "")
                            .getStatus())
                    .isEqualTo(422);
            page(get("/book/make-ups/" + given + "/withdraw"), adaeze);
            assertThat(seen(adaeze, noor)).containsExactlyInAnyOrder("make-ups", given.toString());

            clock.moveTo(Instant.parse("2026-03-12T11:00:00Z"));
            application.getBean(BookingDesk.class).cancel(booking.id(), noor.id());
            page(get("/book/lost"), adaeze);
            assertThat(seen(adaeze, noor)).contains("lost");
        }

        @Test
        void nobodyWithoutARoleHereIsKnownByASignInName() {
            Person ines = new SampleLab(application).person("Ines Quarryvale", Role.INSTRUCTOR);
            Person stranger = new SecondLab(application, "Europe/Berlin").person(Role.STUDENT);

            MockHttpServletResponse unknown =
                    act("/book/make-ups", ines, "login", stranger.login(), "reason", "the power was away");

            assertThat(unknown.getStatus()).isEqualTo(422);
            assertThat(document(unknown).text())
                    .contains("No open account has the sign-in name \"" + stranger.login() + "\".")
                    .doesNotContain(stranger.printedName());
        }

        @Test
        void ofSeveralTheOneThatEndsFirstIsUsedFirst() {
            SampleLab lab = new SampleLab(application);
            Person noor = lab.student("Noor Candlewick");
            Person ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            CellId avocet = lab.cell(7);
            turns.giveMakeUp(noor.id(), "first", ines.id());
            clock.moveBy(Duration.ofMinutes(5));
            turns.giveMakeUp(noor.id(), "second", ines.id());
            numbers.change(new BookingSettings(30, 14, 0, 4, 6, 0, 120, 10, 6), ines.id(), "for this test");

            try {
                assertThat(turns.makeUps(90).stream()
                                .filter(one -> one.person().equals(noor.id()))
                                .map(MakeUp::reason))
                        .containsExactly("first", "second");
                Booking booking = lab.booked(avocet, "2026-03-13T12:07:00Z", noor, null);
                assertThat(turns.makeUpsOf(noor.id()))
                        .filteredOn(one -> one.usedBy() != null)
                        .singleElement()
                        .satisfies(one -> {
                            assertThat(one.reason()).isEqualTo("first");
                            assertThat(one.usedBy()).isEqualTo(booking.id());
                        });
                UUID used = turns.makeUpsOf(noor.id()).stream()
                        .filter(one -> !one.stands())
                        .findFirst()
                        .orElseThrow()
                        .id();
                assertThat(turns.withdraw(used, "too late", ines.id())).isPresent();
            } finally {
                numbers.change(BookingSettings.DEFAULTS, ines.id(), "as it was");
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
