package org.standclear.report;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/** The few lines of a week that an instructor reads and signs, and the rules that choose them. */
public interface WeekExceptions {

    /** At most so many lines a week; what comes after them is counted and not shown. */
    int MOST = 10;

    /** The lines of the week that begins on that Monday, the weightiest rule first. */
    Week week(LocalDate monday);

    /** All rules as they are in force. */
    List<ExceptionRule> rules();

    /** Changes a rule for this week and all others; the reason stays in the record. */
    Changed change(String code, boolean active, int threshold, String reason, PersonId by);

    /**
     * Signs that the week's lines were read.
     *
     * @param sha256 of the lines as the page showed them
     */
    Signed sign(LocalDate monday, String sha256, String remark, PersonId by);

    /**
     * A week.
     *
     * @param more lines that were found and are not among those to read
     * @param sha256 of the lines that are not signed yet, word for word
     */
    record Week(LocalDate monday, List<Line> lines, int more, String sha256) {

        public Week {
            lines = List.copyOf(lines);
        }

        /** How many lines nobody has signed. */
        public long unread() {
            return lines.stream().filter(line -> line.read() == null).count();
        }
    }

    /**
     * A line.
     *
     * @param subject what it is about, stable within rule and week
     * @param href where to look
     * @param read null until somebody signed it
     */
    record Line(
            String rule,
            String title,
            String subject,
            String words,
            String href,
            Instant at,
            @Nullable Read read) {}

    /** Who signed a line, when, and what they wrote beside it. */
    record Read(String by, Instant at, String remark) {}

    /** What came of a change. */
    sealed interface Changed {

        /** It is in force. */
        record Done() implements Changed {}

        /** Nothing changed; says why, and with which field. */
        record Refused(String field, String says) implements Changed {}
    }

    /** What came of signing. */
    sealed interface Signed {

        /** So many lines are signed. */
        record Kept(int lines) implements Signed {}

        /** Nothing was signed; says why. */
        record Refused(String says) implements Signed {}
    }
}
