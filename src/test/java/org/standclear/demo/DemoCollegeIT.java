package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicContainer.dynamicContainer;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.TestFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.cell.VersionEffects;
import org.standclear.cell.VersionEffects.Effect;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.FrozenEvidence;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.people.People;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.signoff.SignoffRecord;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailVerification;

/** The demo can be started at any day and hour: its past is real, its record whole, and there is something to play. */
class DemoCollegeIT {

    /** 8 in the morning on a Monday, in the lab's zone. */
    private static final String MONDAY_MORNING = "2026-03-09T07:00:00Z";

    private static final String TUESDAY = "2026-03-10T10:00:00Z";

    private static final String WEDNESDAY_NOON = "2026-03-11T12:03:00Z";
    private static final String SUNDAY_NIGHT = "2026-03-15T22:30:00Z";

    /** The Sunday on which the lab's clocks went forward. */
    private static final String CLOCK_CHANGE = "2026-03-29T10:40:00Z";

    abstract static class Cases {

        abstract TestDatabase fresh();

        /** A demo's week takes PostgreSQL four times as long, so there it is played from some instants only. */
        boolean plays(String instant) {
            return true;
        }

        /** Every instant is played once, however much is looked at afterwards. */
        @TestFactory
        Stream<DynamicNode> playedAt() {
            Map<String, Map<String, Consumer<DemoAt>>> looks = new LinkedHashMap<>();
            looks.put(MONDAY_MORNING, Map.of("cells", this::hasTheCellsInTheirStates));
            looks.put(TUESDAY, Map.of("cells", this::hasBitternBackAndDunlinOut));
            looks.put(
                    WEDNESDAY_NOON,
                    Map.of(
                            "a tool change", this::hasSixRechecksAfterAToolChangeAndOneLapse,
                            "a second pair", this::hasASecondPairAtAnotherCellInTheDaytime,
                            "incidents", this::hasAnOpenAReviewedAndAClosedIncident,
                            "accounts", this::letsEveryAccountThatIsShownSignIn,
                            "the second lab", this::hasASecondLabInAZoneOfItsOwn));
            looks.put(
                    SUNDAY_NIGHT,
                    Map.of(
                            "a tool change", this::hasSixRechecksAfterAToolChangeAndOneLapse,
                            "the week", this::bringsTheWeekToTheEndThatTheScriptSays));
            looks.put(CLOCK_CHANGE, Map.of("incidents", this::hasAnOpenAReviewedAndAClosedIncident));
            return looks.entrySet().stream()
                    .filter(one -> plays(one.getKey()))
                    .map(one -> dynamicContainer(one.getKey(), at(one.getKey(), one.getValue())));
        }

        private Stream<DynamicNode> at(String instant, Map<String, Consumer<DemoAt>> looks) {
            DemoAt demo = DemoAt.start(Instant.parse(instant), fresh());
            List<DynamicNode> tests = new ArrayList<>();
            if (!instant.equals(TUESDAY)) {
                tests.add(dynamicTest("a whole record", () -> standsReadyWithAWholeRecord(demo, instant)));
            }
            looks.forEach((name, look) -> tests.add(dynamicTest(name, () -> look.accept(demo))));
            // the engine closes the stream once its last test has run
            return tests.stream().onClose(demo::close);
        }

        private void standsReadyWithAWholeRecord(DemoAt demo, String instant) {
            assertThat(demo.the(Clock.class).instant()).isEqualTo(Instant.parse(instant));
            assertThat(demo.the(Trail.class)
                            .verify(demo.the(Labs.class).theLab().id()))
                    .isInstanceOfSatisfying(
                            TrailVerification.Whole.class,
                            whole -> assertThat(whole.entries()).isGreaterThan(1000));
            Booking ready = bookingOf(demo, "noor");
            assertThat(ready.state()).isEqualTo(BookingState.READY);
            assertThat(ready.start()).isBefore(Instant.parse(instant).plusSeconds(601));
            assertThat(ready.end()).isAfter(Instant.parse(instant).plusSeconds(480));
        }

        private void hasSixRechecksAfterAToolChangeAndOneLapse(DemoAt demo) {
            Cell bittern = demo.the(Cells.class).all().stream()
                    .filter(cell -> cell.name().equals("Bittern"))
                    .findFirst()
                    .orElseThrow();
            List<Effect> effects = demo.the(VersionEffects.class).of(bittern.id());
            assertThat(bittern.currentVersion()).isEqualTo(5);
            assertThat(effects)
                    .hasSize(6)
                    .allSatisfy(effect -> assertThat(effect.before()).isEqualTo("within limits on version 4"));
            assertThat(effects).filteredOn(Effect::changed).singleElement().satisfies(effect -> {
                assertThat(effect.operator()).isEqualTo("Wren Saltmarsh");
                assertThat(effect.after()).isEqualTo("outside limits on version 5");
            });
            var lapsed = bookingOf(demo, "wren", effects);
            assertThat(demo.the(SignoffRecord.class).lapses(lapsed))
                    .singleElement()
                    .satisfies(lapse ->
                            assertThat(lapse.because()).isEqualTo("Bittern moved from version 4 to version 5."));
        }

        private BookingId bookingOf(DemoAt demo, String login, List<Effect> effects) {
            String name = demo.the(People.class).byLogin(login).orElseThrow().printedName();
            return effects.stream()
                    .filter(effect -> effect.operator().equals(name))
                    .map(effect -> BookingId.of(effect.bookingHref().substring("/bookings/".length())))
                    .findFirst()
                    .orElseThrow();
        }

        private void hasASecondPairAtAnotherCellInTheDaytime(DemoAt demo) {
            Booking checkedIn = bookingOf(demo, "yuki");
            assertThat(checkedIn.state()).isEqualTo(BookingState.CHECKED);
            assertThat(checkedIn.checkedInAt()).isNotNull();
            assertThat(bookingOf(demo, "kofi").start())
                    .isBefore(Instant.parse(WEDNESDAY_NOON).plusSeconds(601));
        }

        private Booking bookingOf(DemoAt demo, String login) {
            PersonId person =
                    demo.the(People.class).byLogin(login).orElseThrow().id();
            List<Booking> bookings =
                    demo.the(Bookings.class).of(person, demo.the(Clock.class).instant());
            return bookings.stream()
                    .filter(booking -> booking.operator().equals(person))
                    .findFirst()
                    .orElseThrow();
        }

        private void bringsTheWeekToTheEndThatTheScriptSays(DemoAt demo) {
            assertThat(states(demo, "2026-03-09T00:00:00Z", "2026-03-14T00:00:00Z"))
                    .containsExactlyInAnyOrderEntriesOf(Map.of(
                            "CLOSED_OUT", 111L,
                            "MISSED", 3L,
                            "MOVED_BY_STAFF", 2L,
                            "CANCELLED", 2L,
                            "LATE_CANCELLED", 2L,
                            "READY", 2L));
        }

        private Map<String, Long> states(DemoAt demo, String from, String until) {
            Map<String, Long> counts = new TreeMap<>();
            demo.the(JdbcClient.class)
                    .sql(
                            "select state, count(*) as n from bookings where starts_at >= cast(:from as timestamp with time zone)"
                                    + " and starts_at < cast(:until as timestamp with time zone) and lab_id = :lab"
                                    + " group by state")
                    .param("lab", demo.the(Labs.class).theLab().id().value())
                    .param("from", from)
                    .param("until", until)
                    .query((row, number) -> counts.put(row.getString("state"), row.getLong("n")))
                    .list();
            return counts;
        }

        /** The three incidents that the demo tells: one waits for its review, one is in review, one is closed. */
        private void hasAnOpenAReviewedAndAClosedIncident(DemoAt demo) {
            Incidents incidents = demo.the(Incidents.class);
            List<Incident> told =
                    incidents.page(Incidents.Filter.all(), null, 10).incidents();
            assertThat(told)
                    .extracting(one -> one.kind() + " " + one.state())
                    .containsExactly("NEAR_MISS OPEN", "PROPERTY_DAMAGE IN_REVIEW", "FIRST_AID CLOSED");
            assertThat(told.get(0).run()).as("it happened in a run").isNotNull();
            assertThat(demo.the(FrozenEvidence.class).of(told.get(1).id()).orElseThrow())
                    .satisfies(frozen -> assertThat(frozen.holds()).isTrue())
                    .satisfies(frozen -> assertThat(frozen.pieces()).hasSizeGreaterThan(10));
            assertThat(demo.the(CorrectiveActions.class)
                            .unsettled(new CorrectiveActions.Whose.Everybody(), null, 9)
                            .actions())
                    .hasSize(4);
            assertThat(cellStates(demo))
                    .as("back by the rules")
                    .containsEntry("Avocet", CellState.IN_SERVICE)
                    .containsEntry("Curlew", CellState.RESTRICTED);
        }

        private void hasTheCellsInTheirStates(DemoAt demo) {
            assertThat(cellStates(demo))
                    .containsEntry("Avocet", CellState.IN_SERVICE)
                    .containsEntry("Curlew", CellState.RESTRICTED)
                    .containsEntry("Dunlin", CellState.IN_SERVICE);
        }

        private void hasBitternBackAndDunlinOut(DemoAt demo) {
            assertThat(cellStates(demo))
                    .containsEntry("Bittern", CellState.IN_SERVICE)
                    .containsEntry("Dunlin", CellState.OUT_OF_SERVICE);
        }

        private Map<String, CellState> cellStates(DemoAt demo) {
            Map<String, CellState> states = new TreeMap<>();
            for (Cell cell : demo.the(Cells.class).all()) {
                states.put(cell.name(), cell.state());
            }
            return states;
        }

        private void hasASecondLabInAZoneOfItsOwn(DemoAt demo) {
            SecondLabLook look = new SecondLabLook(demo);
            look.hasClocksThatChangeOnOtherDays();
            look.hasAPastARecordAndBookingsAhead();
            look.sharesOneStudentWithTheFirst();
            look.isWhatItsTechnicianSees();
        }

        private void letsEveryAccountThatIsShownSignIn(DemoAt demo) {
            DemoAccounts accounts = demo.the(DemoAccounts.class);
            assertThat(demo.the(JdbcClient.class)
                            .sql("select count(*) from enrolments e join sections s on s.id = e.section_id"
                                    + " join courses c on c.id = s.course_id where c.lab_id = :lab")
                            .param("lab", demo.the(Labs.class).theLab().id().value())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(81);
            assertThat(demo.visitor().get("/sign-in").text())
                    .contains("Noor Candlewick", accounts.password(), accounts.pin());
            accounts.accounts().forEach(account -> demo.visitor().signIn(account.login(), accounts.password()));
            PersonId mateo =
                    demo.the(People.class).byLogin("mateo").orElseThrow().id();
            assertThat(demo.the(SigningPins.class).check(mateo, accounts.pin()))
                    .isInstanceOf(SigningPins.Outcome.Right.class);
        }
    }

    @Nested
    class OnH2 extends Cases {
        @Override
        TestDatabase fresh() {
            return TestDatabase.freshH2();
        }
    }

    @Nested
    class OnPostgres extends Cases {
        @Override
        TestDatabase fresh() {
            return RealPostgres.freshDatabase();
        }

        @Override
        boolean plays(String instant) {
            return instant.equals(WEDNESDAY_NOON);
        }
    }
}
