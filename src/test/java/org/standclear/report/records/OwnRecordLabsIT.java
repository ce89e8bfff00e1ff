package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SecondLab;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.report.OwnRecords;
import org.standclear.report.OwnRecords.Outcome;
import org.standclear.report.OwnRecords.Question;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who works in several labs reads each line by the clock of its lab, and asks those who know it. */
class OwnRecordLabsIT {

    /** Half an hour off the full hours, so that no other clock says the same minute. */
    private static final String FAR = "America/St_Johns";

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        OwnRecords records;

        private SecondLab here;
        private SecondLab there;
        private PersonId halima;

        @BeforeEach
        void somebodyAuthorisedInTheOtherLab() {
            clock.moveToStart();
            here = new SecondLab(application, "Europe/Berlin");
            there = new SecondLab(application, FAR);
            halima = there.person(Role.STUDENT).id();
        }

        private List<String> lines() {
            return records.of(halima).stream()
                    .flatMap(section -> section.lines().stream())
                    .filter(line -> line.contains("operator"))
                    .toList();
        }

        @Test
        void saysOfALineOfAnotherLabWhichAndByWhoseClock() {
            String atThere = DateTimeFormatter.ofPattern("EEE d MMM yyyy HH:mm", Locale.ENGLISH)
                    .withZone(ZoneId.of(FAR))
                    .format(MovableClock.START);

            assertThat(there.in(this::lines))
                    .isNotEmpty()
                    .allSatisfy(line -> assertThat(line).startsWith(atThere).doesNotContain("by the clock of"));
            assertThat(here.in(this::lines))
                    .hasSameSizeAs(there.in(this::lines))
                    .allSatisfy(line -> assertThat(line)
                            .startsWith(atThere)
                            .contains("Second bench")
                            .endsWith("by the clock of America/St Johns"));
        }

        @Test
        void asksTheLabThatTheLineIsOf() {
            String line = here.in(this::lines).get(0);

            assertThat(here.in(() -> records.ask(halima, line, "Why until then?")))
                    .isEqualTo(new Outcome.Kept());

            assertThat(there.in(records::questions)).extracting(Question::about).containsExactly(line);
            assertThat(here.in(records::questions)).isEmpty();
            LabScope.run(
                    here.id(),
                    () -> assertThat(records.questionsOf(halima))
                            .as("the asker sees it everywhere")
                            .hasSize(1));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
