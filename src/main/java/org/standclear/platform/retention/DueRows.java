package org.standclear.platform.retention;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.retention.Stretch.Position;
import org.standclear.platform.time.SqlTime;

/**
 * Reads candidates with one query of their room, for all of them or for one. A room that says where id and clock stand is
 * asked for them there, and an index by them ends the reading where enough are found; from around its query, H2 would read
 * and sort all that is over.
 */
public final class DueRows {

    private final JdbcClient jdbc;
    private final Asking asking;
    private final Function<UUID, Set<Concern>> further;

    /** The room's query with a condition on the clock or the id, and in order of both when many are asked for. */
    private record Asking(String before, String clock, String id) {

        String with(String condition) {
            return before + condition.replace("{clock}", clock).replace("{id}", id);
        }
    }

    /**
     * Candidates that concern one person at most.
     *
     * @param select columns {@code id}, {@code clock_start}, {@code person} (may be null), {@code kept_back} (may be empty)
     *     and {@code said}, which one it is as people know it
     */
    public DueRows(JdbcClient jdbc, String select) {
        this(jdbc, select, id -> Set.of());
    }

    /** Candidates with further concerns, asked for by their ids. */
    public DueRows(JdbcClient jdbc, String select, Function<UUID, Set<Concern>> further) {
        this(jdbc, new Asking("select * from (" + select + ") d where ", "d.clock_start", "d.id"), further);
    }

    /** Candidates that concern one person at most, of a kind that an index finds by age. */
    public DueRows(JdbcClient jdbc, DueFrom where) {
        this(jdbc, where, id -> Set.of());
    }

    /** Candidates with further concerns, of a kind that an index finds by age. */
    public DueRows(JdbcClient jdbc, DueFrom where, Function<UUID, Set<Concern>> further) {
        this(jdbc, new Asking(where.select() + " and ", where.clock(), where.id()), further);
    }

    private DueRows(JdbcClient jdbc, Asking asking, Function<UUID, Set<Concern>> further) {
        this.jdbc = jdbc;
        this.asking = asking;
        this.further = further;
    }

    /** Those whose clocks started within the stretch, earliest first. */
    public List<Candidate> startedIn(Stretch stretch) {
        Position after = stretch.after();
        // the second bound says nothing new; an index follows it, and follows no "or"
        var query = jdbc.sql(asking.with("{clock} < :before "
                        + (after == null
                                ? ""
                                : "and {clock} >= :at and ({clock} > :at or {clock} = :at and {id} > :after) ")
                        + "order by {clock}, {id} fetch first :most rows only"))
                .param("before", SqlTime.toSql(stretch.before()))
                .param("most", stretch.atMost());
        query = after == null
                ? query
                : query.param("at", SqlTime.toSql(after.clockStart())).param("after", after.id());
        return query.query(this::candidate).list();
    }

    /** The one of that id. */
    public Optional<Candidate> find(UUID id) {
        return jdbc.sql(asking.with("{id} = :id"))
                .param("id", id)
                .query(this::candidate)
                .optional();
    }

    private Candidate candidate(ResultSet row, int number) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        UUID person = row.getObject("person", UUID.class);
        Set<Concern> concerns = new HashSet<>(further.apply(id));
        if (person != null) {
            concerns.add(Concern.person(person));
        }
        return new Candidate(
                id, SqlTime.read(row, "clock_start"), concerns, row.getString("kept_back"), row.getString("said"));
    }
}
