package org.standclear.trail;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.StoredEntry.Head;
import org.standclear.trail.StoredEntry.PendingEntry;

/** Adds entries to a lab's chain, in the running transaction and under the lock on the lab's head. */
@Component
class ChainWriter {

    private static final String INSERT = """
            insert into trail_entries
                (lab, sequence, at, kind, subject, actor, words, facts, previous_hash, hash)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""";

    private final JdbcTemplate jdbc;

    ChainWriter(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /** Writes entries of one lab, in their order. */
    void write(List<PendingEntry> pending) {
        LabId lab = pending.get(0).entry().lab();
        Head head = lockedHead(lab);
        List<StoredEntry> entries = new ArrayList<>(pending.size());
        for (PendingEntry one : pending) {
            StoredEntry entry = StoredEntry.following(head, one);
            entries.add(entry);
            head = new Head(entry.sequence(), entry.hash());
        }
        jdbc.batchUpdate(INSERT, entries, entries.size(), ChainWriter::bind);
        jdbc.update(
                "update trail_heads set sequence = ?, hash = ? where lab = ?",
                head.sequence(),
                head.hash(),
                lab.value());
    }

    private Head lockedHead(LabId lab) {
        return jdbc
                .query(
                        "select sequence, hash from trail_heads where lab = ? for update",
                        (row, number) -> new Head(row.getLong("sequence"), row.getString("hash")),
                        lab.value())
                .stream()
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the record of lab " + lab + " has no head"));
    }

    private static void bind(PreparedStatement insert, StoredEntry entry) throws SQLException {
        PersonId actor = entry.actor();
        insert.setObject(1, entry.lab().value());
        insert.setLong(2, entry.sequence());
        insert.setObject(3, SqlTime.toSql(entry.at()));
        insert.setString(4, entry.kind());
        insert.setString(5, entry.subject());
        insert.setObject(6, actor == null ? null : actor.value(), Types.OTHER);
        insert.setString(7, entry.words());
        insert.setString(8, entry.facts());
        insert.setString(9, entry.previousHash());
        insert.setString(10, entry.hash());
    }
}
