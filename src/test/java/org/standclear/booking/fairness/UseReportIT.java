package org.standclear.booking.fairness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.booking.SecondLab;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * How much of a lab's time was used, counted by hand: a lab of one cell that opens from 8 to 18 has twenty slots of half an
 * hour a day. It is Wed 11 March 2026; in Berlin 09:00 UTC is 10:00.
 */
class UseReportIT {

    private static final LocalDate THURSDAY = LocalDate.of(2026, 3, 12);
    private static final double EXACT = 1e-9;

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        UseReport report;

        @Autowired
        BookingDesk desk;

        private SecondLab lab;
        private Person yuki;

        @BeforeEach
        void aLabOfOneCell() {
            clock.moveToStart();
            lab = new SecondLab(application, "Europe/Berlin");
            yuki = lab.person(Role.STUDENT);
        }

        private void booked(String start) {
            lab.in(() -> lab.sample().booked(lab.cell(), start, yuki, null));
        }

        private LabUse on(LocalDate first, LocalDate last) {
            return lab.in(() -> report.between(first, last));
        }

        @Test
        void isWhatIsHeldOfWhatTheCellsGiveWithoutWhatStaffKeep() {
            assertThat(on(THURSDAY, THURSDAY).given()).isEqualTo(20);
            assertThat(on(THURSDAY, THURSDAY).share()).isZero();
            booked("2026-03-12T08:00:00Z");
            booked("2026-03-12T16:30:00Z");
            lab.in(() -> desk.close(new CloseCell(
                    lab.cell(),
                    Instant.parse("2026-03-12T09:00:00Z"),
                    Instant.parse("2026-03-12T11:00:00Z"),
                    CellClosure.Kind.CLASS,
                    "RBT 214",
                    lab.person(Role.TECHNICIAN).id())));

            LabUse use = on(THURSDAY, THURSDAY);

            assertThat(use.given()).isEqualTo(16);
            assertThat(use.held()).isEqualTo(2);
            assertThat(use.share()).isCloseTo(2.0 / 16, within(EXACT));
            assertThat(use.people()).singleElement().satisfies(one -> {
                assertThat(one.slots()).isEqualTo(2);
                // 23 h and 31.5 h ahead
                assertThat(one.ahead()).isEqualTo(Duration.ofMinutes((23 * 60 + 31 * 60 + 30) / 2));
            });
        }

        @Test
        void countsNoOtherDayAndNoOtherLab() {
            booked("2026-03-12T08:00:00Z");
            SecondLab other = new SecondLab(application, "America/Halifax");
            other.in(() ->
                    other.sample().booked(other.cell(), "2026-03-12T13:00:00Z", other.person(Role.STUDENT), null));

            assertThat(on(THURSDAY.minusDays(1), THURSDAY.minusDays(1)).held()).isZero();
            assertThat(on(THURSDAY.plusDays(1), THURSDAY.plusDays(1)).held()).isZero();
            assertThat(on(THURSDAY, THURSDAY.plusDays(3)).held()).isEqualTo(1);
            // Thursday and Friday; closed at the weekend
            assertThat(on(THURSDAY, THURSDAY.plusDays(3)).given()).isEqualTo(40);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
