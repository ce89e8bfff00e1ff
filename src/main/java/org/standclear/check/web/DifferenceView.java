package org.standclear.check.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.program.RevisionChanges.Compared;
import org.standclear.program.RevisionChanges.NotCompared;
import org.standclear.program.RevisionChanges.Said;
import org.standclear.program.RevisionChanges.Since;

/**
 * What a revision changed, as pages show it.
 *
 * @param headline "Since revision 2: 3 changes"
 * @param says a sentence where there is no list; null where there is one
 * @param more how many changes are not listed; null when all are
 * @param note what the comparison leaves open; null when nothing
 * @param before the answer of the revision before on the same cell; null when there is none or it is not asked
 */
record DifferenceView(
        String headline,
        @Nullable String says,
        List<Said> changes,
        @Nullable String more,
        @Nullable String note,
        @Nullable Before before) {

    /** What the check said of the revision before. */
    record Before(String href, String state, String words) {}

    static DifferenceView of(Since since, @Nullable Before before) {
        String revision = "Since revision " + since.before().number();
        if (since instanceof NotCompared not) {
            return new DifferenceView(revision + ": not compared", not.why(), List.of(), null, null, before);
        }
        Compared compared = (Compared) since;
        String note = compared.unread() ? "Lines that the check does not understand are not compared." : null;
        if (compared.count() == 0) {
            String same = compared.unread()
                    ? "Nothing that is understood changed."
                    : "Both mean the same to the check: only remarks, names or spacing differ.";
            return new DifferenceView(revision + ": no change found", same, List.of(), null, note, before);
        }
        String count = compared.count() == 1 ? "one change" : compared.count() + " changes";
        String more = compared.more() == 0 ? null : compared.more() + " more changes are not listed.";
        return new DifferenceView(revision + ": " + count, null, compared.changes(), more, note, before);
    }
}
