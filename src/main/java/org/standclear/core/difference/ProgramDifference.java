package org.standclear.core.difference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Point;

/** Compares two revisions of a program: what is declared, the points, the steps. */
public final class ProgramDifference {

    private final ReadProgram before;
    private final ReadProgram after;
    private final List<Change> changes = new ArrayList<>();
    private final Map<String, String> renamed = new HashMap<>();

    private ProgramDifference(ReadProgram before, ReadProgram after) {
        this.before = before;
        this.after = after;
    }

    /** What changed, declaration first, then points, then steps; empty when both mean the same. */
    public static List<Change> between(ReadProgram before, ReadProgram after) {
        ProgramDifference difference = new ProgramDifference(before, after);
        difference.declaration();
        difference.points();
        difference.changes.addAll(
                new StepAlignment(before.plan().steps(), after.plan().steps(), new StepActs(difference.renamed))
                        .changes());
        return List.copyOf(difference.changes);
    }

    private void declaration() {
        for (DeclarationField field : DeclarationField.values()) {
            Object old = field.in(before.declared());
            Object now = field.in(after.declared());
            if (!Objects.equals(old, now)) {
                changes.add(new Change.DeclaredOtherwise(field, old, now));
            }
        }
    }

    private void points() {
        Map<String, Point> gone = new LinkedHashMap<>(before.plan().points());
        gone.keySet().removeAll(after.plan().points().keySet());
        Map<String, Point> come = new LinkedHashMap<>(after.plan().points());
        come.keySet().removeAll(before.plan().points().keySet());
        rename(gone, come);
        gone.values().forEach(point -> changes.add(new Change.PointRemoved(point)));
        come.values().forEach(point -> changes.add(new Change.PointAdded(point)));
        for (Point now : after.plan().points().values()) {
            Point old = before.plan().points().get(now.name());
            if (old != null && !PointWords.isSamePlace(old, now)) {
                changes.add(new Change.PointMoved(old, now));
            }
        }
    }

    /** A point that is gone and one that is new in the same place are one with another name. */
    private void rename(Map<String, Point> gone, Map<String, Point> come) {
        Map<Object, Point> places = new LinkedHashMap<>();
        come.values().forEach(point -> places.putIfAbsent(place(point), point));
        for (Point old : List.copyOf(gone.values())) {
            Point now = places.remove(place(old));
            if (now != null) {
                changes.add(new Change.PointRenamed(old, now));
                renamed.put(old.name(), now.name());
                gone.remove(old.name());
                come.remove(now.name());
            }
        }
    }

    private static Object place(Point point) {
        return PointWords.key(point);
    }
}
