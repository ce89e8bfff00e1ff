package org.standclear.trail;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/** Reads the record, for pages and exports. */
public interface TrailReader {

    /** Every entry about the thing of that id, in the order in which they happened. */
    List<RecordedEntry> about(LabId lab, String subject);

    /**
     * The latest entries that fit, latest first.
     *
     * @param before only entries before this place in the chain; {@link Long#MAX_VALUE} for the first page
     * @param atMost how many
     */
    List<RecordedEntry> latest(TrailFilter filter, long before, int atMost);

    /** Hands over every entry that fits, earliest first, without holding them all in memory. */
    void each(TrailFilter filter, Consumer<RecordedEntry> use);

    /** The entry at that place of the lab's chain. */
    Optional<RecordedEntry> at(LabId lab, long sequence);

    /** The kinds among the lab's latest few thousand entries, in the order of the alphabet. */
    List<String> kinds(LabId lab);

    /** The people who did something among the lab's latest few thousand entries. */
    List<PersonId> actors(LabId lab);
}
