package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.Year;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailVerification;

/** The demo's second lab, looked at on a Wednesday at noon in the first. */
final class SecondLabLook {

    private final DemoAt demo;
    private final Lab first;
    private final Lab second;

    SecondLabLook(DemoAt demo) {
        this.demo = demo;
        List<Lab> all = demo.the(Labs.class).all();
        assertThat(all).hasSize(2);
        this.first = all.stream()
                .filter(lab -> lab.name().startsWith("Tern Hall"))
                .findFirst()
                .orElseThrow();
        this.second = all.stream().filter(lab -> !lab.equals(first)).findFirst().orElseThrow();
    }

    /** The days are those of the tz database that the JDK ships. */
    void hasClocksThatChangeOnOtherDays() {
        assertThat(changes(second.zone())).isNotEmpty().doesNotContainAnyElementsOf(changes(first.zone()));
    }

    private static List<Instant> changes(ZoneId zone) {
        Instant from = Instant.parse("2026-01-01T00:00:00Z");
        return zone.getRules().getTransitionRules().stream()
                .map(rule -> rule.createTransition(Year.of(2026).getValue()))
                .map(ZoneOffsetTransition::getInstant)
                .filter(from::isBefore)
                .toList();
    }

    void hasAPastARecordAndBookingsAhead() {
        Map<String, Long> states = states();
        assertThat(states).containsKeys("CLOSED_OUT", "BOOKED");
        assertThat(states.get("CLOSED_OUT"))
                .as("Monday and Tuesday, and the end of the week before")
                .isGreaterThan(3);
        assertThat(demo.the(Trail.class).verify(second.id())).isInstanceOf(TrailVerification.Whole.class);
        assertThat(LabScope.in(second.id(), () -> demo.the(Cells.class).all()))
                .extracting(Cell::name)
                .containsExactlyInAnyOrder("Gannet", "Petrel");
        assertThat(demo.the(Cells.class).all()).hasSize(4);
    }

    private Map<String, Long> states() {
        Map<String, Long> counts = new TreeMap<>();
        demo.the(JdbcClient.class)
                .sql("select state, count(*) as n from bookings where lab_id = :lab group by state")
                .param("lab", second.id().value())
                .query((row, number) -> counts.put(row.getString("state"), row.getLong("n")))
                .list();
        return counts;
    }

    void sharesOneStudentWithTheFirst() {
        PersonId halima =
                demo.the(People.class).byLogin("halima.sableton").orElseThrow().id();
        assertThat(labsOf(halima))
                .containsExactlyInAnyOrder(first.id().value(), second.id().value());
        Instant now = demo.the(Clock.class).instant();
        List<Booking> there =
                LabScope.in(second.id(), () -> demo.the(Bookings.class).of(halima, now));
        assertThat(there).isNotEmpty();
        WebUser user = demo.visitor()
                .signIn("halima.sableton", demo.the(DemoAccounts.class).password());
        assertThat(user.get("/me").text()).as("both labs' bookings on one page").contains("Bittern", "Gannet");
    }

    private List<UUID> labsOf(PersonId person) {
        return demo.the(JdbcClient.class)
                .sql("select lab_id from person_roles where person_id = :person")
                .param("person", person.value())
                .query(UUID.class)
                .list();
    }

    void isWhatItsTechnicianSees() {
        WebUser sorrel =
                demo.visitor().signIn("sorrel", demo.the(DemoAccounts.class).password());
        WebPage desk = sorrel.get("/desk");
        assertThat(desk.status()).isEqualTo(200);
        assertThat(sorrel.get("/cells").text()).contains("Gannet", "Petrel").doesNotContain("Avocet");
        assertThat(sorrel.get("/bench").text())
                .contains(second.emergencyNumber())
                .doesNotContain(first.firstAider());
    }
}
