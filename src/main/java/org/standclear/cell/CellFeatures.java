package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** What cells offer beyond the usual, in plain words: "lower bench", "camera above the plate". */
public interface CellFeatures {

    /** The feature that the lab promises to people who work sitting. */
    String LOWER_BENCH = "lower bench";

    /** What the cell has, by words. */
    List<Feature> of(CellId cell);

    /** The words of all cells of the lab that have any. */
    Map<CellId, Set<String>> ofAll();

    /** Says what the cell has; says what is wrong with the words, or nothing. The caller has checked that the person may. */
    Optional<String> add(CellId cell, String words, PersonId by);

    /** The cell does not have it any more; false when somebody said so already. */
    boolean remove(UUID feature, PersonId by);

    /** The words as they are kept and compared: lower case, single blanks. */
    static String kept(String words) {
        return words.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /** One feature. */
    record Feature(UUID id, CellId cell, String words, PersonId addedBy, Instant addedAt) {}
}
