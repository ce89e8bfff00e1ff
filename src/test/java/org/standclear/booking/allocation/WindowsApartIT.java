package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SecondLab;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.platform.web.NotFoundException;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Windows of another lab are not there for its staff, and students of the own lab do not decide them: asked in the services. */
class WindowsApartIT {

    private static final LocalDate FRIDAY = LocalDate.of(2026, 3, 13);
    private static final Instant THURSDAY = Instant.parse("2026-03-12T12:00:00Z");

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        Windows windows;

        @Autowired
        WindowClosing closing;

        @Autowired
        SearchDesk searchDesk;

        @Autowired
        PlanDesk planDesk;

        @Autowired
        Searches searches;

        @Autowired
        TurnRequests requests;

        private SecondLab here;
        private SecondLab there;
        private PersonId adaeze;
        private PersonId noor;
        private UUID window;

        @BeforeEach
        void aWindowInTheOtherLab() {
            clock.moveToStart();
            here = new SecondLab(application, "America/Halifax");
            there = new SecondLab(application, "Europe/Berlin");
            adaeze = here.person(Role.TECHNICIAN).id();
            noor = there.person(Role.STUDENT).id();
            PersonId hemi = there.person(Role.TECHNICIAN).id();
            window = there.in(() -> windows.open("Rush Friday", FRIDAY, FRIDAY, THURSDAY, hemi));
        }

        private static void isNotThere(SecondLab lab, Runnable act) {
            assertThatThrownBy(() -> LabScope.run(lab.id(), act)).isInstanceOf(NotFoundException.class);
        }

        private TurnRequest wish() {
            return new TurnRequest(Id.newValue(), window, noor, null, null, "", 1, false, false, List.of(), List.of());
        }

        private void nobodyDecides(SecondLab lab, PersonId by) {
            isNotThere(lab, () -> closing.close(window, "why not", by));
            isNotThere(lab, () -> closing.reopen(window, by));
            isNotThere(lab, () -> searchDesk.begin(window, 1, by));
            isNotThere(lab, () -> planDesk.undo(window, by));
            UUID search = there.in(() -> searches.begin(window, 1, by));
            isNotThere(lab, () -> planDesk.accept(search, by));
        }

        @Test
        void staffOfAnotherLabDecideNoWindow() {
            nobodyDecides(here, adaeze);
            isNotThere(here, () -> requests.ask(wish()));
            isNotThere(here, () -> requests.withdraw(window, noor));
            assertThat(there.in(() -> windows.find(window).orElseThrow().isUndecided()))
                    .isTrue();
        }

        @Test
        void studentsDecideNoneEither() {
            nobodyDecides(there, noor);
            isNotThere(there, () -> windows.open("Mine", FRIDAY, FRIDAY, THURSDAY, noor));
            assertThat(there.in(() -> requests.ask(wish()))).isTrue();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
