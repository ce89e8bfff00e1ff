package org.standclear.retention.records;

import java.util.Optional;
import java.util.UUID;
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
            case RUN -> id.flatMap(one -> one("select id from runs where id = :id", one));
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
            case PERSON -> people.printedName(new PersonId(id));
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
