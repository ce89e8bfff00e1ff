package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.message.Messages;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * Reminders around the night in which a lab's clocks change, in two labs that change them on different days. Rules of the tz
 * database 2025b: Halifax is at UTC-4 until 8 March 2026, 06:00 UTC, then at UTC-3; Berlin at UTC+1 until 29 March, 01:00
 * UTC, then at UTC+2. The instants are by hand.
 */
class ClockChangeRemindersIT {

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        OpeningHours hours;

        @Autowired
        Reminders reminders;

        @Autowired
        Messages messages;

        @Autowired
        JdbcClient jdbc;

        /** A booking on a day with other hours than usual, made long before, by somebody whose mail rests from 21 to 7. */
        private Booking booked(SecondLab lab, String day, String start) {
            return lab.in(() -> {
                hours.except(
                        new OpeningHours.DayHours(
                                LocalDate.parse(day),
                                List.of(new OpenPeriod(LocalTime.of(7, 0), LocalTime.of(9, 0))),
                                "a morning of measuring"),
                        PersonId.next());
                Person noor = lab.sample().student("Noor Candlewick");
                assertThat(messages.wish(noor.id(), Messages.Wishes.plain("noor@quillhaven.example")))
                        .isEmpty();
                return lab.sample().booked(lab.cell(), start, noor, null);
            });
        }

        /** What the reminder at that instant says, and when its e-mail may go out. */
        private String remindedAt(SecondLab lab, Booking booking, Duration before) {
            clock.standAt(booking.start().minus(before).minusSeconds(1));
            lab.in(() -> remind());
            int told = messages.of(booking.operator(), 9).size();
            clock.standAt(booking.start().minus(before));
            lab.in(() -> remind());
            List<Messages.Kept> all = messages.of(booking.operator(), 9);
            assertThat(all).as("one more, and not a second earlier").hasSize(told + 1);
            Instant next = jdbc.sql("""
                            select next_try_at from messages where person_id = :person
                            order by created_at desc, id desc fetch first 1 row only""")
                    .param("person", booking.operator().value())
                    .query((row, number) -> SqlTime.read(row, "next_try_at"))
                    .single();
            return all.get(0).subject().replaceAll(".*, (?=\\w{3} )", "") + " | " + next;
        }

        private boolean remind() {
            reminders.remind();
            return true;
        }

        @Test
        void waitForTheMorningOfTheLabThatChangesItsClocks() {
            clock.standAt(Instant.parse("2026-03-05T12:00:00Z"));
            SecondLab halifax = new SecondLab(application, "America/Halifax");
            SecondLab berlin = new SecondLab(application, "Europe/Berlin");
            // 07:30 on the morning after, in Halifax an hour less after the evening before than on other days
            Booking inHalifax = booked(halifax, "2026-03-08", "2026-03-08T10:30:00Z");
            Booking usual = booked(berlin, "2026-03-08", "2026-03-08T06:30:00Z");
            assertThat(remindedAt(berlin, usual, Duration.ofHours(24)))
                    .as("at 07:30 the day before")
                    .endsWith(" | 2026-03-07T06:30:00Z");
            assertThat(remindedAt(halifax, inHalifax, Duration.ofHours(24)))
                    .as("at 06:30 by the clock of the day before, so it waits for 07:00 of that day")
                    .endsWith(" | 2026-03-07T11:00:00Z");
            assertThat(remindedAt(berlin, usual, Duration.ofHours(1)))
                    .as("at 06:30, waits for 07:00")
                    .endsWith(" | 2026-03-08T06:00:00Z");
            assertThat(remindedAt(halifax, inHalifax, Duration.ofHours(1)))
                    .as("at 06:30 by the new clock, waits for its 07:00")
                    .endsWith(" | 2026-03-08T10:00:00Z");

            clock.standAt(Instant.parse("2026-03-20T12:00:00Z"));
            Booking inBerlin = booked(berlin, "2026-03-29", "2026-03-29T05:30:00Z");
            assertThat(remindedAt(berlin, inBerlin, Duration.ofHours(24)))
                    .as("06:30 of the day before")
                    .endsWith(" | 2026-03-28T06:00:00Z");
            assertThat(remindedAt(berlin, inBerlin, Duration.ofHours(1)))
                    .as("06:30 of the day itself, an hour earlier than on other days")
                    .contains("07:30")
                    .endsWith(" | 2026-03-29T05:00:00Z");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
