package org.standclear.core.program;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Elbow;
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

    private static final List<String> FIELDS = List.of("x", "y", "z", "yaw", "elbow");
    private static final Map<String, Elbow> SIDES =
            Map.of(Elbow.LEFT.word(), Elbow.LEFT, Elbow.RIGHT.word(), Elbow.RIGHT);

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
        Vector place = new Vector(
                fields.number("x", NumberRule.ANY),
                fields.number("y", NumberRule.ANY),
                fields.number("z", NumberRule.ANY));
        @Nullable Elbow side = fields.has("elbow") ? fields.choice("elbow", SIDES) : null;
        ToolPose pose = new ToolPose(place, fields.number("yaw", NumberRule.ANY));
        if (byName.put(name, new Point(name, pose, side, key.line())) != null) {
            throw new BadInputException(key.line(), "the point " + Words.quoted(name) + " stands here a second time");
        }
    }
}
