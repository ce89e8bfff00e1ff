package org.standclear.trail;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.standclear.platform.ids.LabId;
import org.standclear.trail.TrailVerification.Broken;
import org.standclear.trail.TrailVerification.Whole;

/**
 * Recomputes a lab's chain from its first entry, a thousand rows at a time, so that memory does not grow with the
 * record. It may run while others append.
 */
final class ChainCheck {

    private static final int ROWS = 1000;

    private final JdbcTemplate jdbc;
    private final LabId lab;
    private long checked;
    private long lastRead = Long.MIN_VALUE;
    private String hash = EntryHash.NONE;

    ChainCheck(JdbcTemplate jdbc, LabId lab) {
        this.jdbc = jdbc;
        this.lab = lab;
    }

    TrailVerification run() {
        Ends ends = ends();
        Broken broken = checkUntil(ends.last());
        return broken == null ? compare(ends) : broken;
    }

    /** Head and last entry in one statement, so that both are of the same moment. */
    private Ends ends() {
        return jdbc
                .query(
                        """
                        select (select count(*) from trail_heads h where h.lab = l.id) as heads,
                            (select max(e.sequence) from trail_entries e where e.lab = l.id) as last,
                            h.sequence as head, h.hash as head_hash
                        from labs l left join trail_heads h on h.lab = l.id where l.id = ?""",
                        (row, number) -> new Ends(
                                row.getInt("heads") == 1,
                                row.getLong("last"),
                                row.getLong("head"),
                                row.getString("head_hash")),
                        lab.value())
                .stream()
                .findFirst()
                .orElse(new Ends(false, 0, 0, EntryHash.NONE));
    }

    private @Nullable Broken checkUntil(long last) {
        List<StoredEntry> page = page(last);
        while (!page.isEmpty()) {
            for (StoredEntry entry : page) {
                Broken broken = check(entry);
                if (broken != null) {
                    return broken;
                }
            }
            page = page(last);
        }
        return null;
    }

    private List<StoredEntry> page(long last) {
        return jdbc.query(
                "select * from trail_entries where lab = ? and sequence > ? and sequence <= ? order by lab, sequence"
                        + " fetch first " + ROWS + " rows only",
                EntryRows::read,
                lab.value(),
                lastRead,
                last);
    }

    private @Nullable Broken check(StoredEntry entry) {
        long expected = checked + 1;
        if (entry.sequence() > expected) {
            return new Broken(
                    expected,
                    "Entry " + expected + " is missing; the next one that is there is entry " + entry.sequence() + ".");
        }
        if (entry.sequence() < expected) {
            return new Broken(entry.sequence(), "Entry " + entry.sequence() + " stands before the first entry.");
        }
        if (!EntryHash.of(entry).equals(entry.hash())) {
            return new Broken(expected, "Entry " + expected + " was changed: its content does not give its hash.");
        }
        if (!entry.previousHash().equals(hash)) {
            return new Broken(
                    expected,
                    checked == 0
                            ? "Entry 1 is not the first of its chain: it names an entry before it."
                            : "Entry " + expected + " does not follow entry " + checked
                                    + ": one of the two was replaced, or an entry between them taken out.");
        }
        checked = expected;
        lastRead = expected;
        hash = entry.hash();
        return null;
    }

    private TrailVerification compare(Ends ends) {
        if (!ends.hasHead() && ends.last() > 0) {
            return new Broken(1, "The lab's head is missing, which names the last entry.");
        }
        if (ends.head() > checked) {
            return new Broken(
                    checked + 1,
                    "Entry " + (checked + 1) + " is missing: the record was cut off; its head names entry "
                            + ends.head() + ".");
        }
        if (ends.head() < checked) {
            return new Broken(
                    ends.head() + 1,
                    "Entry " + (ends.head() + 1) + " was added beside the application: the lab's head names entry "
                            + ends.head() + " as the last.");
        }
        if (ends.hasHead() && !hash.equals(ends.headHash())) {
            return new Broken(checked, "Entry " + checked + " is not the last entry that the lab's head names.");
        }
        return new Whole(checked, hash);
    }

    /** Where the entries end and where the head says they end. */
    private record Ends(
            boolean hasHead, long last, long head, @Nullable String headHash) {}
}
