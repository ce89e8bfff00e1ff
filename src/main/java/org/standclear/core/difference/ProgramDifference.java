package org.standclear.core.difference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Found;
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
        difference.found();
        difference.points();
        difference.changes.addAll(
                new StepAlignment(before.plan().steps(), after.plan().steps(), new StepActs(difference.renamed))
                        .changes());
        return List.copyOf(difference.changes);
    }

    private void declaration() {
        for (DeclarationField field : DeclarationField.values()) {
            Object old = field.in(before.declared().values());
            Object now = field.in(after.declared().values());
            if (!Objects.equals(old, now)) {
                changes.add(new Change.DeclaredOtherwise(field, old, now));
            }
        }
    }

    /** What the files state beside their declarations; a statement that only stands on another line is the same. */
    private void found() {
        Map<Statement, Found> old = statements(before);
        Map<Statement, Found> now = statements(after);
        now.forEach((statement, found) -> {
            if (!old.containsKey(statement)) {
                changes.add(new Change.FoundAdded(found));
            }
        });
        old.forEach((statement, found) -> {
            if (!now.containsKey(statement)) {
                changes.add(new Change.FoundRemoved(found));
            }
        });
    }

    /** What is stated, wherever it stands. */
    private record Statement(DeclarationField field, Object value) {}

    private static Map<Statement, Found> statements(ReadProgram program) {
        Map<Statement, Found> first = new LinkedHashMap<>();
        program.declared()
                .found()
                .forEach(found -> first.putIfAbsent(new Statement(found.field(), found.value()), found));
        return first;
    }

    /** The points that the file names. */
    private static Map<String, Point> named(ReadProgram program) {
        Map<String, Point> named = new LinkedHashMap<>(program.plan().points());
        named.values().removeIf(PointWords::isUnnamed);
        return named;
    }

    private void points() {
        Map<String, Point> old = named(before);
        Map<String, Point> now = named(after);
        Map<String, Point> gone = new LinkedHashMap<>(old);
        gone.keySet().removeAll(now.keySet());
        Map<String, Point> come = new LinkedHashMap<>(now);
        come.keySet().removeAll(old.keySet());
        rename(gone, come);
        gone.values().forEach(point -> changes.add(new Change.PointRemoved(point)));
        come.values().forEach(point -> changes.add(new Change.PointAdded(point)));
        for (Point one : now.values()) {
            Point former = old.get(one.name());
            if (former != null && !PointWords.isSamePlace(former, one)) {
                changes.add(new Change.PointMoved(former, one));
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
