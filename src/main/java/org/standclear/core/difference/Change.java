package org.standclear.core.difference;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Found;
import org.standclear.core.program.Point;
import org.standclear.core.program.Step;

/** One thing that changed from one revision to the next. */
public sealed interface Change {

    /** The change in words, without a full stop. */
    String words();

    /** The step of the later revision that it concerns, or else of the earlier one; null when it concerns none. */
    default @Nullable Integer step() {
        return null;
    }

    /** A declared value is another; null where nothing is declared. */
    record DeclaredOtherwise(
            DeclarationField field,
            @Nullable Object before,
            @Nullable Object after) implements Change {

        @Override
        public String words() {
            if (before == null) {
                return after == null ? "" : "declares " + field.word() + " " + field.shown(after);
            }
            return after == null
                    ? "no longer declares " + field.word() + ", before " + field.shown(before)
                    : "declared " + field.word() + " " + field.shown(before) + " to " + field.shown(after);
        }
    }

    /** The file states something beside its declaration that it did not state before. */
    record FoundAdded(Found found) implements Change {

        @Override
        public String words() {
            String where = found.line() > 0 ? " on line " + found.line() : "";
            return "states " + found.field().word() + " " + found.field().shown(found.value()) + where
                    + ", which it did not before";
        }
    }

    /** The file no longer states something. */
    record FoundRemoved(Found found) implements Change {

        @Override
        public String words() {
            return "no longer states " + found.field().word() + " "
                    + found.field().shown(found.value());
        }
    }

    /** A point is new. */
    record PointAdded(Point point) implements Change {

        @Override
        public String words() {
            return "point " + point.name() + " added at " + PointWords.place(point);
        }
    }

    /** A point is gone. */
    record PointRemoved(Point point) implements Change {

        @Override
        public String words() {
            return "point " + point.name() + " removed, it was at " + PointWords.place(point);
        }
    }

    /** A point has another name and the same place. */
    record PointRenamed(Point before, Point after) implements Change {

        @Override
        public String words() {
            return "point " + before.name() + " is now called " + after.name();
        }
    }

    /** A point has another place, turn or side. */
    record PointMoved(Point before, Point after) implements Change {

        @Override
        public String words() {
            return "point " + after.name() + " " + PointWords.way(before, after);
        }
    }

    /** A step is new. */
    record StepInserted(Step inserted) implements Change {

        @Override
        public String words() {
            return "step " + inserted.number() + " inserted: " + StepActs.act(inserted);
        }

        @Override
        public Integer step() {
            return inserted.number();
        }
    }

    /** A step is gone. */
    record StepRemoved(Step removed) implements Change {

        @Override
        public String words() {
            return "the former step " + removed.number() + " removed: " + StepActs.act(removed);
        }
    }

    /**
     * A step does something else than it did.
     *
     * @param what each in words, at least one
     */
    record StepChanged(Step before, Step after, List<String> what) implements Change {

        public StepChanged {
            what = List.copyOf(what);
        }

        @Override
        public String words() {
            String was = before.number() == after.number() ? "" : " (formerly " + before.number() + ")";
            return "step " + after.number() + was + " " + String.join(", ", what);
        }

        @Override
        public Integer step() {
            return after.number();
        }
    }

    /** So many steps differ that comparing them one by one would say nothing. */
    record StepsReplaced(int before, int after) implements Change {

        @Override
        public String words() {
            return before + " steps replaced by " + after + " others";
        }
    }
}
