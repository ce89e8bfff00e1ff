package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.MoveBooking;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A booking of an accepted plan that staff moved is the plan's still: people read where it is, and undoing takes it back. */
class MovedPlanIT {

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases extends WindowCases {

        private static final Instant ELEVEN = Instant.parse("2026-03-13T11:00:00Z");

        @Autowired
        BookingDesk desk;

        private UUID window;

        @BeforeEach
        void anAcceptedPlan() {
            window = window();
            location(send(request(window, 1, FRIDAY_EIGHT).param("partner", mateo.login()), noor));
            location(send(form("/searches/" + search(window) + "/accept"), ines));
        }

        private Booking noors() {
            List<Booking> ahead = ahead(noor);
            assertThat(ahead).hasSize(1);
            return ahead.get(0);
        }

        private void move(Instant start, CellId cell) {
            assertThat(desk.moveTo(new MoveBooking(noors().id(), cell, start, true, ines.id(), "cable chafed")))
                    .isInstanceOf(BookingDesk.Outcome.Booked.class);
        }

        private List<String> turnsOf(Person person) {
            return page(get("/windows/" + window), person)
                    .select("#got ~ ul li")
                    .eachText();
        }

        @Test
        void peopleReadWhereTheirTurnIsNowAndWhatBecameOfIt() {
            assertThat(turnsOf(noor)).singleElement().asString().endsWith(": you run");

            move(ELEVEN, avocet);
            assertThat(turnsOf(noor)).singleElement().asString().contains("11:00-11:30", ": you run, moved by staff");
            assertThat(turnsOf(mateo))
                    .singleElement()
                    .asString()
                    .contains("11:00-11:30", ": you stand at the e-stop, moved by staff");

            bookings.askForAttendant(noors().id(), mateo.id());
            assertThat(turnsOf(mateo)).singleElement().asString().endsWith(": you are not needed at the e-stop");

            desk.cancel(noors().id(), noor.id());
            assertThat(turnsOf(noor)).singleElement().asString().endsWith(": cancelled");
        }

        @Test
        void undoingTakesBackWhatWasMovedToo() {
            move(ELEVEN, avocet);
            move(ELEVEN.plus(Duration.ofMinutes(30)), avocet);

            location(send(form("/windows/" + window + "/undo"), ines));

            assertThat(ahead(noor)).isEmpty();
        }

        @Test
        void whatWasMovedBeforeTheWindowAndHasBegunStandsAndHindersNothing() {
            Instant today = MovableClock.START.plus(Duration.ofHours(2));
            Person kofi = student("Kofi Marblewood");
            location(send(form("/windows/" + window + "/undo"), ines));
            location(send(request(window, 1, FRIDAY_TEN).param("partner", mateo.login()), kofi));
            location(send(form("/searches/" + search(window) + "/accept"), ines));
            move(today, avocet);
            clock.moveTo(today.plus(Duration.ofMinutes(2)));
            assertThat(ahead(kofi)).hasSize(1);

            location(send(form("/windows/" + window + "/undo"), ines));

            assertThat(ahead(kofi)).isEmpty();
            assertThat(bookings.of(noor.id(), MovableClock.START))
                    .filteredOn(booking -> booking.start().equals(today))
                    .singleElement()
                    .satisfies(booking ->
                            assertThat(booking.state().holdsItsSlot()).isTrue());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
