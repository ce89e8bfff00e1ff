package org.standclear.booking.allocation;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.allocation.Search.State;
import org.standclear.booking.allocation.Search.Value;
import org.standclear.core.allocation.Level;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Searches in the database, so that a page of any instance shows how far one is and can stop it. */
@Repository
public class Searches {

    /** Without a sign of life for so long, whoever searched is gone. */
    static final Duration SILENCE = Duration.ofSeconds(30);

    private final JdbcClient jdbc;
    private final Clock clock;

    Searches(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The search of that id; lost when nobody gave a sign of life for half a minute. */
    public Optional<Search> find(UUID id) {
        return jdbc.sql("select * from booking_searches where id = :id")
                .param("id", id)
                .query((row, number) -> search(row))
                .optional();
    }

    /** The searches of a window, latest first. */
    public List<Search> of(UUID window) {
        return jdbc.sql("select * from booking_searches where window_id = :window order by begun_at desc, id")
                .param("window", window)
                .query((row, number) -> search(row))
                .list();
    }

    /** Whether somebody asked it to stop and it still runs: it hears that with its next sign of life. */
    public boolean isStopping(UUID id) {
        return jdbc.sql("select count(*) from booking_searches where id = :id and stop_asked and state = 'RUNNING'")
                        .param("id", id)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    /** Asks whoever searches to stop with the best plan so far. */
    @Transactional
    public void stop(UUID id) {
        jdbc.sql("update booking_searches set stop_asked = true where id = :id and state = 'RUNNING'")
                .param("id", id)
                .update();
    }

    UUID begin(UUID window, long seed, PersonId by) {
        UUID id = Id.newValue();
        Instant now = clock.instant();
        jdbc.sql("""
                insert into booking_searches (id, window_id, state, seed, standing, stop_asked, says, begun_by, begun_at,
                    alive_at)
                values (:id, :window, 'RUNNING', :seed, '', false, '', :by, :at, :at)""")
                .param("id", id)
                .param("window", window)
                .param("seed", seed)
                .param("by", by.value())
                .param("at", SqlTime.toSql(now))
                .update();
        return id;
    }

    /** A sign of life with how far it is; true when somebody asked it to stop, or ended it. */
    @Transactional
    public boolean alive(UUID id, Map<Level, Value> standing) {
        jdbc.sql(
                        "update booking_searches set standing = :standing, alive_at = :at where id = :id and state = 'RUNNING'")
                .param("standing", written(standing))
                .param("at", SqlTime.toSql(clock.instant()))
                .param("id", id)
                .update();
        return jdbc.sql("select stop_asked or state <> 'RUNNING' from booking_searches where id = :id")
                .param("id", id)
                .query(Boolean.class)
                .single();
    }

    /** Ends a running one; false when it had ended already. */
    boolean end(UUID id, State state, Map<Level, Value> standing, String says) {
        return jdbc.sql("""
                update booking_searches set state = :state, standing = :standing, says = :says, ended_at = :at
                where id = :id and state = 'RUNNING'""")
                        .param("state", state.name())
                        .param("standing", written(standing))
                        .param("says", says.length() > 400 ? says.substring(0, 400) : says)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }

    private Search search(ResultSet row) throws SQLException {
        State state = State.valueOf(row.getString("state"));
        Instant alive = SqlTime.read(row, "alive_at");
        boolean silent =
                state == State.RUNNING && alive.isBefore(clock.instant().minus(SILENCE));
        return new Search(
                row.getObject("id", UUID.class),
                row.getObject("window_id", UUID.class),
                silent ? State.LOST : state,
                row.getLong("seed"),
                read(row.getString("standing")),
                silent
                        ? "The program that searched gave no sign of life for half a minute. Nothing was booked; search again."
                        : row.getString("says"),
                new PersonId(row.getObject("begun_by", UUID.class)),
                SqlTime.read(row, "begun_at"),
                alive,
                SqlTime.readNullable(row, "ended_at"));
    }

    /** "UNPLACED 5 5,WISHES 479 0". */
    static String written(Map<Level, Value> standing) {
        List<String> parts = new ArrayList<>();
        standing.forEach((level, value) -> parts.add(level.name() + " " + value.value() + " " + value.least()));
        return String.join(",", parts);
    }

    static Map<Level, Value> read(String written) {
        Map<Level, Value> standing = new EnumMap<>(Level.class);
        for (String part : written.isEmpty() ? new String[0] : written.split(",")) {
            String[] words = part.split(" ");
            standing.put(Level.valueOf(words[0]), new Value(Long.parseLong(words[1]), Long.parseLong(words[2])));
        }
        return standing;
    }
}
