package org.standclear.trail;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.UUID;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Reads rows of trail_entries. */
final class EntryRows {

    private EntryRows() {}

    static StoredEntry read(ResultSet row, int number) throws SQLException {
        UUID actor = row.getObject("actor", UUID.class);
        return new StoredEntry(
                new LabId(row.getObject("lab", UUID.class)),
                row.getLong("sequence"),
                SqlTime.read(row, "at"),
                row.getString("kind"),
                row.getString("subject"),
                actor == null ? null : new PersonId(actor),
                row.getString("words"),
                row.getString("facts"),
                row.getString("previous_hash"),
                row.getString("hash"));
    }

    static RecordedEntry recorded(ResultSet row, int number) throws SQLException {
        return RecordedEntry.of(read(row, number));
    }
}
