package org.standclear.core.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.GantryArm;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.arm.articulated.ArticulatedArm;
import org.standclear.core.arm.articulated.DhRow;
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
            "links",
            "axes",
            "straight",
            "moving-mass-kg",
            "rated-payload-kg",
            "reduced-power-speed-mm-s",
            "stop");
    private static final List<String> LINK_FIELDS = List.of("a-mm", "alpha-deg", "d-mm", "theta-deg");
    private static final List<String> AXIS_FIELDS = List.of("name", "min", "max", "speed", "acceleration");

    /** The names of the axes in their order. */
    private static final Map<String, List<String>> ORDER = Map.of(
            "scara", List.of("shoulder", "elbow", "lift", "wrist"),
            "gantry", List.of("x", "y", "z", "yaw"),
            "articulated", List.of("waist", "shoulder", "elbow", "forearm", "wrist", "flange"));

    private static final Set<String> LINEAR = Set.of("lift", "x", "y", "z");

    private ArmFields() {}

    static Fields of(YamlNode node) {
        return Fields.of(node, "an arm", FIELDS);
    }

    static Arm arm(Fields arm) {
        String kind = arm.choice("kind", Map.of("scara", "scara", "gantry", "gantry", "articulated", "articulated"));
        List<Axis> axes = axes(arm, kind);
        switch (kind) {
            case "gantry" -> {
                refuse(arm, "links-mm", "a gantry has no links");
                refuse(arm, "links", "a gantry has no links");
                return new GantryArm(axes);
            }
            case "articulated" -> {
                refuse(arm, "links-mm", "an articulated arm has a table of links");
                return new ArticulatedArm(rows(arm), axes);
            }
            default -> {
                refuse(arm, "links", "a scara has two lengths in links-mm");
                List<Double> links = arm.numbers("links-mm", 2, NumberRule.ABOVE_ZERO);
                return new ScaraArm(links.get(0), links.get(1), axes);
            }
        }
    }

    private static void refuse(Fields arm, String field, String why) {
        if (arm.has(field)) {
            throw new BadInputException(arm.lineOf(field), why + "; leave " + field + " out");
        }
    }

    private static List<DhRow> rows(Fields arm) {
        List<YamlNode> nodes = arm.list("links");
        int axes = ORDER.getOrDefault("articulated", List.of()).size();
        if (nodes.size() != axes) {
            throw new BadInputException(
                    arm.lineOf("links"),
                    "an articulated arm has " + axes + " links, one for each axis; this one has " + nodes.size());
        }
        return nodes.stream().map(ArmFields::row).toList();
    }

    private static DhRow row(YamlNode node) {
        Fields link = Fields.of(node, "a link", LINK_FIELDS);
        return new DhRow(
                link.number("a-mm", NumberRule.ANY),
                link.number("alpha-deg", NumberRule.ANY),
                link.number("d-mm", NumberRule.ANY),
                link.numberOr("theta-deg", NumberRule.ANY, 0));
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
            axes.add(axis(axis, name, !LINEAR.contains(name)));
        }
        if (axes.size() < names.size()) {
            throw otherAxes(arm.lineOf("axes"), kind, names);
        }
        return axes;
    }

    private static BadInputException otherAxes(int line, String kind, List<String> names) {
        return new BadInputException(
                line,
                (kind.startsWith("a") ? "an " : "a ") + kind + " has the axes " + Words.allOf(names)
                        + ", in this order");
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
