package org.standclear.core.program;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;
import org.standclear.core.text.YamlNode;

/** Takes the steps of a motion sheet one by one; points may be defined after the steps that use them. */
final class SheetSteps {

    /** A bound on what one file can make the program hold. */
    private static final int MOST = 100_000;

    private static final String ACCELERATION = "acceleration-percent";

    /** The fields of a step by its verb. */
    private static final Map<String, List<String>> FIELDS = Map.of(
            "move", List.of("move", "speed-percent", ACCELERATION),
            "straight", List.of("straight", "speed-mm-s", ACCELERATION),
            "wait-s", List.of("wait-s"),
            "do", List.of("do"));

    private static final List<String> VERBS = List.of("move", "straight", "wait-s", "do");

    private final List<Unresolved> steps = new ArrayList<>();
    private final Map<String, String> names = new HashMap<>();

    /** A step whose point is not looked up yet. */
    @FunctionalInterface
    private interface Unresolved {
        Step with(Map<String, Point> points);
    }

    void take(YamlNode.Scalar key, YamlNode value) {
        if (!key.text().isEmpty()) {
            throw new BadInputException(key.line(), "steps needs a list: begin each step with \"- \"");
        }
        if (steps.size() == MOST) {
            throw new BadInputException(value.line(), "the sheet has more than " + MOST + " steps; split it up");
        }
        steps.add(step(steps.size() + 1, value));
    }

    private Unresolved step(int number, YamlNode node) {
        String verb = verb(node);
        Fields step = Fields.of(node, "a step with " + verb, FIELDS.getOrDefault(verb, List.of()));
        int line = step.line();
        return switch (verb) {
            case "move" -> joint(number, step);
            case "straight" -> straight(number, step);
            case "wait-s" -> {
                Step wait = new Step.Wait(number, line, step.number("wait-s", NumberRule.NOT_BELOW_ZERO));
                yield points -> wait;
            }
            default -> {
                Step action = new Step.Action(number, line, shared(step.text("do")));
                yield points -> action;
            }
        };
    }

    private static String verb(YamlNode node) {
        if (!(node instanceof YamlNode.Mapping mapping)) {
            throw new BadInputException(node.line(), "a step needs one of " + Words.anyOf(VERBS));
        }
        List<String> verbs =
                VERBS.stream().filter(mapping.entries()::containsKey).toList();
        if (verbs.size() > 1) {
            throw new BadInputException(
                    node.line(), "a step has one verb, this one has " + Words.allOf(verbs) + "; make it two steps");
        }
        if (verbs.isEmpty()) {
            throw new BadInputException(node.line(), "a step needs one of " + Words.anyOf(VERBS));
        }
        return verbs.get(0);
    }

    private Unresolved joint(int number, Fields step) {
        String name = shared(step.text("move"));
        int line = step.line();
        double speed = step.numberOr("speed-percent", NumberRule.PERCENT, 100);
        double acceleration = step.numberOr(ACCELERATION, NumberRule.PERCENT, 100);
        return points -> new Step.Joint(number, line, point(name, line, number, points), speed, acceleration);
    }

    private Unresolved straight(int number, Fields step) {
        String name = shared(step.text("straight"));
        int line = step.line();
        double speed = step.number("speed-mm-s", NumberRule.ABOVE_ZERO);
        double acceleration = step.numberOr(ACCELERATION, NumberRule.PERCENT, 100);
        return points -> new Step.Straight(number, line, point(name, line, number, points), speed, acceleration);
    }

    /** One text for equal names, so that a long list of steps does not hold thousands of copies. */
    private String shared(String name) {
        return names.computeIfAbsent(name, same -> same);
    }

    private static Point point(String name, int line, int step, Map<String, Point> points) {
        Point point = points.get(name);
        if (point == null) {
            throw new BadInputException(line, "step " + step + " goes to " + undefined(name, points.keySet()));
        }
        return point;
    }

    static String undefined(String name, Collection<String> names) {
        return Words.quoted(name) + ", which is not among the points"
                + Words.near(name, names)
                        .map(near -> "; did you mean " + Words.quoted(near) + "?")
                        .orElse("; define it there");
    }

    List<Step> resolved(Map<String, Point> points, int line) {
        if (steps.isEmpty()) {
            throw new BadInputException(line, "steps is empty; write at least one step");
        }
        return steps.stream().map(step -> step.with(points)).toList();
    }
}
