package org.standclear.booking;

import java.time.Instant;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * A time for which staff want a cell to themselves.
 *
 * @param words what for, as people will read it on the calendar
 */
public record CloseCell(CellId cell, Instant start, Instant end, CellClosure.Kind kind, String words, PersonId by) {}
