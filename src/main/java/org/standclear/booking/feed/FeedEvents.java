package org.standclear.booking.feed;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingState;
import org.standclear.booking.CellClosure;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Bookings and closures as events. An event's sequence is the booking's own count of changes. */
@Component
class FeedEvents {

    private static final String BOOKINGS = """
            select id, starts_at, ends_at, operator_id, attendant_id, state, changed_at, made_at, version,
                (select c.name from cells c where c.id = cell_id) as cell_name,
                (select l.name || ', ' || l.room from labs l where l.id = lab_id) as room
            from bookings where ends_at > :since and\s""";

    /** Of a hash: more than enough to be no other event's, and short enough for one line. */
    private static final int ID_DIGITS = 32;

    private final JdbcClient jdbc;
    private final CellNames cells;
    private final People people;
    private final Labs labs;
    private final BookingNumbers numbers;
    private final String site;

    FeedEvents(
            JdbcClient jdbc,
            CellNames cells,
            People people,
            Labs labs,
            BookingNumbers numbers,
            @Value("${standclear.mail.site:http://localhost:8080}") String site) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.people = people;
        this.labs = labs;
        this.numbers = numbers;
        this.site = site.replaceAll("/+$", "");
    }

    /** A booking with what a feed needs of it. */
    private record Row(
            UUID id,
            String cell,
            String room,
            Instant start,
            Instant end,
            PersonId operator,
            @Nullable PersonId attendant,
            BookingState state,
            Instant changedAt,
            int version) {

        boolean cancelled() {
            return !state.holdsItsSlot();
        }

        /** Who else has a part in it. */
        @Nullable
        PersonId other(PersonId person) {
            return operator.equals(person) ? attendant : operator;
        }
    }

    /** The person's own in every lab, with the other person's name, as on the person's page. */
    List<CalendarEvent> ofPerson(PersonId person, Instant since) {
        List<Row> rows = jdbc.sql(BOOKINGS + "operator_id = :person union all " + BOOKINGS
                        + "attendant_id = :person order by starts_at, id")
                .param("person", person.value())
                .param("since", SqlTime.toSql(since))
                .query(FeedEvents::row)
                .list();
        Map<PersonId, Person> named = people.all(rows.stream()
                .flatMap(row -> Stream.ofNullable(row.other(person)))
                .collect(Collectors.toSet()));
        return rows.stream().map(row -> own(row, person, named)).toList();
    }

    private CalendarEvent own(Row row, PersonId person, Map<PersonId, Person> named) {
        boolean operates = row.operator().equals(person);
        PersonId other = row.other(person);
        String cell = row.cell();
        String with = other == null ? "Needs an e-stop attendant." : "With " + name(named.get(other)) + ".";
        return event(
                row,
                operates ? cell : "At the e-stop: " + cell,
                with + "\n" + row.state().words(),
                site + "/bookings/" + row.id());
    }

    private static String name(@Nullable Person person) {
        return person == null ? "somebody" : person.printedName();
    }

    /** A cell's, naming nobody; the feed's own id goes into those of its events. */
    List<CalendarEvent> ofCell(UUID feed, CellId cell, Instant since) {
        return nameless(feed, "cell_id = :id", cell.value(), since);
    }

    /** All cells', naming nobody. */
    List<CalendarEvent> ofLab(UUID feed, LabId lab, Instant since) {
        return nameless(feed, "lab_id = :id", lab.value(), since);
    }

    private List<CalendarEvent> nameless(UUID feed, String condition, UUID id, Instant since) {
        Map<CellId, String> names = cells.all();
        Duration usual = numbers.inForce().slotLength();
        List<CalendarEvent> events = new ArrayList<>();
        jdbc.sql(BOOKINGS + condition + " order by starts_at, id")
                .param("id", id)
                .param("since", SqlTime.toSql(since))
                .query(FeedEvents::row)
                .list()
                .forEach(row -> events.addAll(stretches(feed, row, usual)));
        events.addAll(jdbc.sql("select * from booking_closures where ends_at > :since and " + condition
                        + " order by starts_at, id")
                .param("id", id)
                .param("since", SqlTime.toSql(since))
                .query((row, number) -> closure(row, names))
                .list());
        return events;
    }

    /**
     * In stretches of the length of the lab's slots, as on pages: a longer one would say that somebody needs longer. Nor do
     * two stretches tell that they belong together: their ids are drawn from what no reader knows, and they say the day of
     * the last change, not the second.
     */
    private static List<CalendarEvent> stretches(UUID feed, Row row, Duration usual) {
        List<CalendarEvent> stretches = new ArrayList<>();
        for (Instant start = row.start(); start.isBefore(row.end()); start = start.plus(usual)) {
            stretches.add(new CalendarEvent(
                    Sha256.of(feed + " " + row.id() + " " + stretches.size()).substring(0, ID_DIGITS) + "@standclear",
                    row.version() - 1,
                    row.changedAt().truncatedTo(ChronoUnit.DAYS),
                    start,
                    start.plus(usual),
                    row.cell() + ": booked",
                    "",
                    row.room(),
                    row.cancelled(),
                    ""));
        }
        return stretches;
    }

    private CalendarEvent event(Row row, String summary, String description, String url) {
        return new CalendarEvent(
                row.id() + "@standclear",
                row.version() - 1,
                row.changedAt(),
                row.start(),
                row.end(),
                summary,
                description,
                row.room(),
                row.cancelled(),
                url);
    }

    /** Without the words beside it: staff write them for staff, and an address is passed on easily. */
    private CalendarEvent closure(ResultSet row, Map<CellId, String> names) throws SQLException {
        Instant removed = SqlTime.readNullable(row, "removed_at");
        String cell = names.getOrDefault(new CellId(row.getObject("cell_id", UUID.class)), "A cell");
        return new CalendarEvent(
                row.getObject("id", UUID.class) + "@standclear",
                removed == null ? 0 : 1,
                removed == null ? SqlTime.read(row, "made_at") : removed,
                SqlTime.read(row, "starts_at"),
                SqlTime.read(row, "ends_at"),
                cell + ": " + CellClosure.Kind.valueOf(row.getString("kind")).words(),
                "",
                labs.theLab().name() + ", " + labs.theLab().room(),
                removed != null,
                "");
    }

    private static Row row(ResultSet row, int number) throws SQLException {
        UUID attendant = row.getObject("attendant_id", UUID.class);
        Instant changed = SqlTime.readNullable(row, "changed_at");
        return new Row(
                row.getObject("id", UUID.class),
                row.getString("cell_name"),
                row.getString("room"),
                SqlTime.read(row, "starts_at"),
                SqlTime.read(row, "ends_at"),
                new PersonId(row.getObject("operator_id", UUID.class)),
                attendant == null ? null : new PersonId(attendant),
                BookingState.valueOf(row.getString("state")),
                changed == null ? SqlTime.read(row, "made_at") : changed,
                row.getInt("version"));
    }
}
