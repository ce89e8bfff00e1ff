package org.standclear.retention.records;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.People;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.HoldTargets;

/** Reads the tables of the rooms below. */
@Repository
class JdbcHoldTargets implements HoldTargets {

    private static final Pattern CELL_AND_TIME = Pattern.compile("(.{1,60}?),? (\\d{4}-\\d{2}-\\d{2}) (\\d{2}:\\d{2})");

    private final JdbcClient jdbc;
    private final People people;
    private final Labs labs;
    private final LabTime labTime;

    JdbcHoldTargets(JdbcClient jdbc, People people, Labs labs, LabTime labTime) {
        this.jdbc = jdbc;
        this.people = people;
        this.labs = labs;
        this.labTime = labTime;
    }

    @Override
    public Optional<UUID> find(About about, String named) {
        Optional<UUID> id = id(named);
        return switch (about) {
            case PERSON ->
                id.isPresent()
                        ? people.find(new PersonId(id.get()))
                                .map(person -> person.id().value())
                        : people.byLogin(named)
                                .filter(person -> !person.roles().isEmpty())
                                .map(person -> person.id().value());
            case RUN -> id.isPresent() ? one("select id from runs where id = :id", id.get()) : runAt(named);
            case INCIDENT ->
                id.isPresent() ? one("select id from incidents where id = :id", id.get()) : incidentNumbered(named);
        };
    }

    private static Optional<UUID> id(String named) {
        try {
            return Optional.of(Id.parse(named));
        } catch (IllegalArgumentException noId) {
            return Optional.empty();
        }
    }

    private Optional<UUID> one(String sql, UUID id) {
        return jdbc.sql(sql).param("id", id).query(UUID.class).optional();
    }

    /** The run of a booking on a cell, by the cell's name and when the booking, or the run itself, began. */
    private Optional<UUID> runAt(String named) {
        Matcher parts = CELL_AND_TIME.matcher(named);
        if (!parts.matches()) {
            return Optional.empty();
        }
        Instant from;
        try {
            from = LocalDateTime.parse(parts.group(2) + "T" + parts.group(3))
                    .atZone(labTime.zone())
                    .toInstant();
        } catch (DateTimeParseException noTime) {
            return Optional.empty();
        }
        List<UUID> runs = jdbc.sql("""
                select r.id from runs r join cells c on c.id = r.cell_id left join bookings b on b.id = r.booking_id
                where c.lab_id = :lab and lower(c.name) = lower(:cell)
                    and (b.starts_at = :from or r.started_at >= :from and r.started_at < :until)
                order by r.started_at fetch first 2 rows only""")
                .param("lab", labs.theLab().id().value())
                .param("cell", parts.group(1).strip())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(from.plus(Duration.ofMinutes(1))))
                .query(UUID.class)
                .list();
        // two of one minute: only the page of the run itself can tell which is meant
        return runs.size() == 1 ? Optional.of(runs.get(0)) : Optional.empty();
    }

    private Optional<UUID> incidentNumbered(String named) {
        if (!named.matches("[0-9]{1,6}")) {
            return Optional.empty();
        }
        return jdbc.sql("select id from incidents where lab_id = :lab and number = :number")
                .param("lab", labs.theLab().id().value())
                .param("number", Integer.parseInt(named))
                .query(UUID.class)
                .optional();
    }

    @Override
    public String words(About about, UUID id) {
        return switch (about) {
            case PERSON ->
                people.find(new PersonId(id))
                        .map(person -> person.printedName() + " (" + person.login() + ")")
                        .orElse("a person");
            case RUN ->
                jdbc.sql("select r.started_at, c.name from runs r join cells c on c.id = r.cell_id where r.id = :id")
                        .param("id", id)
                        .query((row, number) -> "run on " + row.getString("name") + ", "
                                + labTime.full(SqlTime.read(row, "started_at")))
                        .optional()
                        .orElse("a run");
            case INCIDENT ->
                jdbc.sql("select number from incidents where id = :id")
                        .param("id", id)
                        .query(Integer.class)
                        .optional()
                        .map(number -> "incident " + number)
                        .orElse("an incident");
        };
    }
}
