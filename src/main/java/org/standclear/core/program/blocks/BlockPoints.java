package org.standclear.core.program.blocks;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Point;
import org.standclear.core.program.StatedDeclaration;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;

/**
 * The points of a program in blocks: the end of each move, named by its N word or its line, and those that a comment
 * names, such as {@code (point park X0 Y0 Z100 C0)}, in mm and deg, so that a declaration can say where the arm stands.
 */
final class BlockPoints {

    private static final String NUMBER = "([-+]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+))";
    private static final Pattern NAMED = Pattern.compile(
            "point +([A-Za-z][A-Za-z0-9-]{0,40}) +X *" + NUMBER + " +Y *" + NUMBER + " +Z *" + NUMBER + "(?: +C *"
                    + NUMBER + ")?"
                    + "(?:[ ,]+((?:shoulder|elbow|wrist|pitch|roll) .*))?",
            Pattern.CASE_INSENSITIVE);

    private final Map<String, Point> byName = new LinkedHashMap<>();

    private final TreeMap<Integer, BlockPosture> postures = new TreeMap<>(Map.of(0, BlockPosture.NONE));

    Map<String, Point> byName() {
        return byName;
    }

    /** What is in force on a line. */
    BlockPosture posture(int line) {
        return postures.floorEntry(line).getValue();
    }

    /** Takes the point of a comment that names one, and the posture of a comment that says one. */
    void note(String line, int number) {
        String comment = Block.comment(line).map(String::strip).orElse("");
        BlockPosture.in(comment, number).ifPresent(posture -> postures.put(number, posture));
        if (comment.length() > 200 || !comment.regionMatches(true, 0, "point ", 0, 6)) {
            return;
        }
        Matcher named = NAMED.matcher(comment);
        if (named.matches()) {
            Vector place = new Vector(value(named, 2, number), value(named, 3, number), value(named, 4, number));
            double yaw = named.group(5) == null ? 0 : value(named, 5, number);
            String name = named.group(1);
            BlockPosture posture = named.group(6) == null
                    ? posture(number)
                    : BlockPosture.of(named.group(6).toLowerCase(Locale.ROOT), number);
            ToolPose pose = new ToolPose(place, yaw, posture.pitch(), posture.roll());
            if (byName.put(name, new Point(name, pose, posture.branch(), number)) != null) {
                throw new BadInputException(number, "the point " + Words.quoted(name) + " stands here a second time");
            }
        }
    }

    private static double value(Matcher named, int group, int line) {
        double value = Double.parseDouble(named.group(group));
        if (!NumberRule.ANY.accepts(value)) {
            throw new BadInputException(
                    line, Words.quoted(named.group(group)) + " is too large; write " + NumberRule.ANY.words());
        }
        return value;
    }

    /** The end of a move. */
    Point end(@Nullable Double n, int line, ToolPose pose) {
        String name = n == null || n != Math.rint(n) || byName.containsKey("N" + n.longValue())
                ? "line " + line
                : "N" + n.longValue();
        Point point = new Point(name, pose, posture(line).branch(), line);
        byName.put(name, point);
        return point;
    }

    /** Where the file itself says that the arm stands before its first block; null when that is no named point. */
    @Nullable
    ToolPose start(List<StatedDeclaration> stated) {
        for (StatedDeclaration statement : stated) {
            String name = statement.values().start();
            Point point = name == null ? null : byName.get(name);
            if (point != null) {
                return point.pose();
            }
        }
        return null;
    }

    /** Refuses a start that is none of the points. */
    void requireStarts(List<StatedDeclaration> stated) {
        for (StatedDeclaration statement : stated) {
            String start = statement.values().start();
            if (start != null && !byName.containsKey(start)) {
                throw new BadInputException(
                        statement.lineOf(DeclarationField.START),
                        "start names " + Words.quoted(start)
                                + ", which is not a point of the file; write a comment such"
                                + " as (point " + (start.matches("[A-Za-z][A-Za-z0-9-]*") ? start : "park")
                                + " X0 Y0 Z100 C0)");
            }
        }
    }
}
