package org.standclear.program;

import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Keeps the phrasebooks of cells, version after version. */
public interface Phrasebooks {

    /** The latest version of a cell's phrasebook; empty when the cell has none. */
    Optional<PhrasebookVersion> current(CellId cell);

    /** A version of a cell's phrasebook. */
    Optional<PhrasebookVersion> version(CellId cell, int number);

    /** All versions of a cell's phrasebook, latest first. */
    List<PhrasebookVersion> versions(CellId cell);

    /** The latest versions of all cells' phrasebooks. */
    List<PhrasebookVersion> allCurrent();

    /** Keeps a book as the cell's next version; one that cannot be read is refused and nothing kept. */
    Outcome keep(NewVersion version);

    /**
     * A book somebody brings.
     *
     * @param book its text (YAML)
     * @param basedOn the number of the version that was changed; 0 for a first one
     */
    record NewVersion(CellId cell, String book, String reason, PersonId author, int basedOn) {}

    /** What came of it. */
    sealed interface Outcome {}

    /** The book is kept. */
    record Kept(PhrasebookVersion version) implements Outcome {}

    /** Nothing was kept; says what is wrong and where. */
    record Refused(String says) implements Outcome {}
}
