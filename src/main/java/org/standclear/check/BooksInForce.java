package org.standclear.check;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.core.check.ReaderChoice;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.program.PhrasebookVersion;
import org.standclear.program.Phrasebooks;
import org.standclear.program.Programs;

/** Which phrasebook may read a program on a cell: a motion sheet is read by none, so that another book is nothing to it. */
@Component
class BooksInForce {

    private static final int KEPT = 2_000;

    private final Phrasebooks phrasebooks;
    private final Programs programs;

    /** Asked at every look at a booking; revisions never change. */
    private final Map<RevisionId, Boolean> sheets = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<RevisionId, Boolean> eldest) {
            return size() > KEPT;
        }
    };

    BooksInForce(Phrasebooks phrasebooks, Programs programs) {
        this.phrasebooks = phrasebooks;
        this.programs = programs;
    }

    /** The version in force; empty when the cell has none or the program is a motion sheet. */
    Optional<PhrasebookVersion> readerOf(RevisionId revision, CellId cell) {
        return phrasebooks.current(cell).filter(version -> !isSheet(revision));
    }

    private boolean isSheet(RevisionId revision) {
        synchronized (sheets) {
            Boolean known = sheets.get(revision);
            if (known != null) {
                return known;
            }
        }
        boolean sheet = ReaderChoice.isSheet(new String(programs.bytes(revision), StandardCharsets.UTF_8));
        synchronized (sheets) {
            sheets.put(revision, sheet);
        }
        return sheet;
    }
}
