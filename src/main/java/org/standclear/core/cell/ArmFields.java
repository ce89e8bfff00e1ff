package org.standclear.core.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.GantryArm;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.quantity.Interval;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;
import org.standclear.core.text.YamlNode;

/** Reads the arm of a cell file. */
final class ArmFields {

    private static final List<String> FIELDS = List.of(
            "kind",
            "links-mm",
            "axes",
            "straight",
            "moving-mass-kg",
            "rated-payload-kg",
            "reduced-power-speed-mm-s",
            "stop");
    private static final List<String> AXIS_FIELDS = List.of("name", "min", "max", "speed", "acceleration");

    /** The names of the axes in their order, and which of them turn. */
    private static final Map<String, Map<String, Boolean>> AXES = Map.of(
            "scara", Map.of("shoulder", true, "elbow", true, "lift", false, "wrist", true),
            "gantry", Map.of("x", false, "y", false, "z", false, "yaw", true));

    private static final Map<String, List<String>> ORDER =
            Map.of("scara", List.of("shoulder", "elbow", "lift", "wrist"), "gantry", List.of("x", "y", "z", "yaw"));

    private ArmFields() {}

    static Fields of(YamlNode node) {
        return Fields.of(node, "an arm", FIELDS);
    }

    static Arm arm(Fields arm) {
        String kind = arm.choice("kind", Map.of("scara", "scara", "gantry", "gantry"));
        List<Axis> axes = axes(arm, kind);
        if (kind.equals("gantry")) {
            if (arm.has("links-mm")) {
                throw new BadInputException(arm.lineOf("links-mm"), "a gantry has no links; leave links-mm out");
            }
            return new GantryArm(axes);
        }
        List<Double> links = arm.numbers("links-mm", 2, NumberRule.ABOVE_ZERO);
        return new ScaraArm(links.get(0), links.get(1), axes);
    }

    private static List<Axis> axes(Fields arm, String kind) {
        List<String> names = ORDER.getOrDefault(kind, List.of());
        List<YamlNode> nodes = arm.list("axes");
        List<Axis> axes = new ArrayList<>();
        for (YamlNode node : nodes) {
            Fields axis = Fields.of(node, "an axis", AXIS_FIELDS);
            String name = axis.text("name");
            if (axes.size() == names.size() || !names.get(axes.size()).equals(name)) {
                throw otherAxes(node.line(), kind, names);
            }
            axes.add(axis(
                    axis,
                    name,
                    Boolean.TRUE.equals(AXES.getOrDefault(kind, Map.of()).get(name))));
        }
        if (axes.size() < names.size()) {
            throw otherAxes(arm.lineOf("axes"), kind, names);
        }
        return axes;
    }

    private static BadInputException otherAxes(int line, String kind, List<String> names) {
        return new BadInputException(line, "a " + kind + " has the axes " + Words.allOf(names) + ", in this order");
    }

    private static Axis axis(Fields axis, String name, boolean rotary) {
        double min = axis.number("min", NumberRule.ANY);
        double max = axis.number("max", NumberRule.ANY);
        if (!(min <= max)) {
            throw new BadInputException(axis.lineOf("max"), "max of the axis " + name + " is below its min");
        }
        return new Axis(
                name,
                rotary,
                new Interval(min, max),
                axis.numberIfGiven("speed", NumberRule.ABOVE_ZERO),
                axis.number("acceleration", NumberRule.ABOVE_ZERO));
    }

    static ArmFacts facts(Fields arm) {
        Fields straight = Fields.of(arm.node("straight"), "straight", List.of("speed", "acceleration"));
        Fields stop = Fields.of(arm.node("stop"), "stop", List.of("reaction-s", "stopping-s"));
        return new ArmFacts(
                straight.number("speed", NumberRule.ABOVE_ZERO),
                straight.number("acceleration", NumberRule.ABOVE_ZERO),
                arm.number("moving-mass-kg", NumberRule.NOT_BELOW_ZERO),
                arm.numberIfGiven("rated-payload-kg", NumberRule.NOT_BELOW_ZERO),
                arm.numberIfGiven("reduced-power-speed-mm-s", NumberRule.ABOVE_ZERO),
                stop.number("reaction-s", NumberRule.NOT_BELOW_ZERO),
                stop.number("stopping-s", NumberRule.NOT_BELOW_ZERO));
    }
}
