package org.standclear.trail;

import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.ids.LabId;

/** The record in a database that the application need not run on. */
public final class OfflineRecord {

    private final JdbcTemplate jdbc;

    /** Reads from that database; asks for one connection at a time. */
    public OfflineRecord(DataSource database) {
        this.jdbc = new JdbcTemplate(database);
    }

    /** The labs whose records are there, with their names. */
    public List<LabName> labs() {
        return jdbc.query(
                "select id, college, name from labs order by id",
                (row, number) -> new LabName(
                        new LabId(row.getObject("id", UUID.class)),
                        row.getString("college") + ", " + row.getString("name")));
    }

    /** Recomputes the lab's chain and names the first entry that does not fit. */
    public TrailVerification verify(LabId lab) {
        return new ChainCheck(jdbc, lab).run();
    }

    /** Whether the lab's record still has the entry that somebody kept the hash of. */
    public KeptHash.Comparison compare(KeptHash kept, LabId lab) {
        return kept.compare(new JdbcTrailReader(JdbcClient.create(jdbc)), lab);
    }

    /** A lab as people call it. */
    public record LabName(LabId id, String words) {}
}
