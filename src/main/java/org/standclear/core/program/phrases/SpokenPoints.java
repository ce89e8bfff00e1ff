package org.standclear.core.program.phrases;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.BranchWords;
import org.standclear.core.program.Point;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Words;

/** The points that a program defines, anywhere in the file, and those that its moves give in place. */
final class SpokenPoints {

    private final Map<String, Point> byName = new LinkedHashMap<>();

    static SpokenPoints of(List<MatchedLine> lines) {
        SpokenPoints points = new SpokenPoints();
        lines.stream().filter(line -> line.means(Meaning.POINT)).forEach(points::define);
        return points;
    }

    Map<String, Point> byName() {
        return byName;
    }

    private void define(MatchedLine line) {
        String name = line.text(Part.POINT);
        if (byName.put(name, point(name, line)) != null) {
            throw new BadInputException(
                    line.number(), "the point " + Words.quoted(name) + " stands here a second time");
        }
    }

    private static Point point(String name, MatchedLine line) {
        if (Part.AXES.stream().anyMatch(line::has)) {
            double[] axes = Part.AXES.stream().mapToDouble(line::number).toArray();
            return Point.ofAxes(name, AxisValues.of(axes), line.number());
        }
        Vector place = new Vector(line.number(Part.X), line.number(Part.Y), line.number(Part.Z));
        double yaw = line.number(Part.YAW);
        if (Part.POSTURE.stream().noneMatch(line::has)) {
            return new Point(name, new ToolPose(place, yaw), side(line), line.number());
        }
        Posture posture = new Posture(
                word(line, Part.SHOULDER, BranchWords.SHOULDERS),
                word(line, Part.ELBOW, BranchWords.BENDS),
                word(line, Part.WRIST, BranchWords.WRISTS));
        ToolPose pose = new ToolPose(place, yaw, line.number(Part.PITCH), line.number(Part.ROLL));
        return new Point(name, pose, posture, line.number());
    }

    private static @Nullable Elbow side(MatchedLine line) {
        return line.has(Part.ELBOW) ? word(line, Part.ELBOW, BranchWords.SIDES) : null;
    }

    private static <T> T word(MatchedLine line, Part part, Map<String, T> words) {
        T meant = words.get(line.checked(part));
        if (meant == null) {
            String why = words == BranchWords.BENDS
                    ? "beside a shoulder and a wrist write up or down"
                    : "without a shoulder and a wrist write left or right";
            throw new BadInputException(line.number(), part.word() + " is " + line.checked(part) + "; " + why);
        }
        return meant;
    }

    /** Where a move goes. */
    Point target(MatchedLine line) {
        if (!line.has(Part.POINT)) {
            return byName.computeIfAbsent("line " + line.number(), name -> point(name, line));
        }
        String name = line.text(Part.POINT);
        Point point = byName.get(name);
        if (point == null) {
            throw new BadInputException(
                    line.number(),
                    "the move goes to " + Words.quoted(name) + ", which no line of the file defines"
                            + Words.near(name, byName.keySet())
                                    .map(near -> "; did you mean " + Words.quoted(near) + "?")
                                    .orElse(""));
        }
        return point;
    }
}
