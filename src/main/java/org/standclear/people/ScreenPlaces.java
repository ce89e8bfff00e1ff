package org.standclear.people;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Where the shared bench screens stand. One that stands at a cell for good shows no other cell's bench. */
public interface ScreenPlaces {

    /** The cell at which that account's screen stands; empty when it stands at any, or is no bench screen. */
    Optional<CellId> cellOf(PersonId account);

    /** Stands the screen at a cell, or at any; the caller has checked that the person may. */
    Outcome place(PersonId screen, @Nullable CellId cell, PersonId by);

    /** What came of it. */
    sealed interface Outcome {

        /** It stands there. */
        record Done() implements Outcome {}

        /** It does not; says why, and by which field of the form. */
        record Refused(String field, String says) implements Outcome {}
    }
}
