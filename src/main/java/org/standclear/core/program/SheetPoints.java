package org.standclear.core.program;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;
import org.standclear.core.text.YamlNode;

/** Takes the points of a motion sheet one by one. */
final class SheetPoints {

    /** A bound on what one file can make the program hold. */
    private static final int MOST = 100_000;

    private static final int SIX = 6;

    private static final List<String> FIELDS =
            List.of("x", "y", "z", "yaw", "elbow", "roll", "pitch", "shoulder", "wrist", "axes");

    /** Only a six-axis arm has them. */
    private static final List<String> OF_SIX_AXES = List.of("roll", "pitch", "shoulder", "wrist");

    private final Map<String, Point> byName = new LinkedHashMap<>();

    Map<String, Point> byName() {
        return byName;
    }

    void take(YamlNode.Scalar key, YamlNode value) {
        if (byName.size() == MOST) {
            throw new BadInputException(key.line(), "the sheet has more than " + MOST + " points; split it up");
        }
        if (key.text().isEmpty()) {
            throw new BadInputException(
                    key.line(), "points needs named points, such as \"home: {x: 0, y: 300, z: 80, yaw: 0}\"");
        }
        String name = Fields.text(key, "the name of a point");
        Fields fields = Fields.of(value, "a point", FIELDS);
        if (byName.put(name, point(name, key.line(), fields)) != null) {
            throw new BadInputException(key.line(), "the point " + Words.quoted(name) + " stands here a second time");
        }
    }

    private static Point point(String name, int line, Fields fields) {
        if (fields.has("axes")) {
            return ofAxes(name, line, fields);
        }
        Vector place = new Vector(
                fields.number("x", NumberRule.ANY),
                fields.number("y", NumberRule.ANY),
                fields.number("z", NumberRule.ANY));
        double yaw = fields.number("yaw", NumberRule.ANY);
        if (OF_SIX_AXES.stream().noneMatch(fields::has)) {
            @Nullable Branch side = fields.has("elbow") ? fields.choice("elbow", BranchWords.SIDES) : null;
            return new Point(name, new ToolPose(place, yaw), side, line);
        }
        Posture posture = new Posture(
                fields.choice("shoulder", BranchWords.SHOULDERS),
                fields.choice("elbow", BranchWords.BENDS),
                fields.choice("wrist", BranchWords.WRISTS));
        double pitch = fields.number("pitch", NumberRule.ANY);
        double roll = fields.number("roll", NumberRule.ANY);
        return new Point(name, new ToolPose(place, yaw, pitch, roll), posture, line);
    }

    private static Point ofAxes(String name, int line, Fields fields) {
        for (String other : FIELDS) {
            if (!other.equals("axes") && fields.has(other)) {
                throw new BadInputException(
                        fields.lineOf(other), "a point with axes needs no " + other + "; leave one of the two out");
            }
        }
        List<Double> axes = fields.numbers("axes", SIX, NumberRule.ANY);
        return Point.ofAxes(
                name, AxisValues.of(axes.stream().mapToDouble(axis -> axis).toArray()), line);
    }
}
