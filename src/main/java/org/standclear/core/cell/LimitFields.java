package org.standclear.core.cell;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Box;
import org.standclear.core.quantity.Interval;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;
import org.standclear.core.text.YamlNode;

/** Reads the limits of a cell file. */
final class LimitFields {

    private static final List<String> FIELDS = List.of(
            "power",
            "tool-speed-mm-s",
            "moving-part-speed-mm-s",
            "moving-part-rule",
            "override-percent",
            "payload-kg",
            "space",
            "keep-out",
            "contact",
            "stand-line-mm",
            "separation");
    private static final List<String> SEPARATION_FIELDS =
            List.of("rule", "human-speed-mm-s", "intrusion-mm", "person-uncertainty-mm", "robot-uncertainty-mm");

    private static final Map<String, Power> POWERS = byWord(Power.values(), Power::word);
    private static final Map<String, Obligation> RULES = byWord(Obligation.values(), Obligation::word);
    private static final Map<String, BodyRegion> REGIONS = byWord(BodyRegion.values(), BodyRegion::word);

    private LimitFields() {}

    private static <E> Map<String, E> byWord(E[] values, Function<E, String> word) {
        return Arrays.stream(values).collect(Collectors.toUnmodifiableMap(word, value -> value));
    }

    static CellLimits limits(Fields file) {
        Fields limits = Fields.of(file.node("limits"), "the limits", FIELDS);
        return new CellLimits(
                limits.choice("power", POWERS),
                limits.number("tool-speed-mm-s", NumberRule.ABOVE_ZERO),
                limits.numberIfGiven("moving-part-speed-mm-s", NumberRule.ABOVE_ZERO),
                rule(limits, "moving-part-rule"),
                limits.number("override-percent", NumberRule.PERCENT),
                limits.numberIfGiven("payload-kg", NumberRule.NOT_BELOW_ZERO),
                limits.has("space") ? box(Fields.of(limits.node("space"), "a space", List.of("x", "y", "z"))) : null,
                limits.has("keep-out") ? keepOut(limits) : List.of(),
                contact(limits),
                limits.number("stand-line-mm", NumberRule.NOT_BELOW_ZERO),
                separation(limits));
    }

    private static Obligation rule(Fields fields, String name) {
        return fields.has(name) ? fields.choice(name, RULES) : Obligation.REQUIRED;
    }

    private static Box box(Fields box) {
        return new Box(side(box, "x"), side(box, "y"), side(box, "z"));
    }

    private static Interval side(Fields box, String name) {
        List<Double> ends = box.numbers(name, 2, NumberRule.ANY);
        if (!(ends.get(0) < ends.get(1))) {
            throw new BadInputException(box.lineOf(name), name + " needs [from, to] with from below to");
        }
        return new Interval(ends.get(0), ends.get(1));
    }

    private static List<KeepOut> keepOut(Fields limits) {
        List<KeepOut> boxes = new ArrayList<>();
        for (YamlNode node : limits.list("keep-out")) {
            Fields box = Fields.of(node, "a keep-out box", List.of("name", "x", "y", "z"));
            boxes.add(new KeepOut(box.text("name"), box(box)));
        }
        return boxes;
    }

    private static @Nullable ContactLimit contact(Fields limits) {
        if (!limits.has("contact")) {
            return null;
        }
        Fields contact = Fields.of(limits.node("contact"), "contact", List.of("regions", "rule", "values"));
        Set<BodyRegion> regions = new LinkedHashSet<>();
        for (YamlNode node : contact.list("regions")) {
            regions.add(region(node));
        }
        if (regions.isEmpty()) {
            throw new BadInputException(
                    contact.lineOf("regions"), "regions names none; name one, or leave contact out");
        }
        return new ContactLimit(
                List.copyOf(regions),
                rule(contact, "rule"),
                contact.has("values") ? RegionFields.of(contact.node("values")) : Map.of());
    }

    private static BodyRegion region(YamlNode node) {
        String name = Fields.text(node, "a region");
        BodyRegion region = REGIONS.get(name);
        if (region == null) {
            List<String> known =
                    Arrays.stream(BodyRegion.values()).map(BodyRegion::word).toList();
            throw new BadInputException(
                    node.line(), Words.quoted(name) + " is not a region; write " + Words.anyOf(known));
        }
        return region;
    }

    private static @Nullable SeparationLimit separation(Fields limits) {
        if (!limits.has("separation")) {
            return null;
        }
        Fields separation = Fields.of(limits.node("separation"), "separation", SEPARATION_FIELDS);
        return new SeparationLimit(
                rule(separation, "rule"),
                separation.number("human-speed-mm-s", NumberRule.ABOVE_ZERO),
                separation.number("intrusion-mm", NumberRule.NOT_BELOW_ZERO),
                separation.number("person-uncertainty-mm", NumberRule.NOT_BELOW_ZERO),
                separation.number("robot-uncertainty-mm", NumberRule.NOT_BELOW_ZERO));
    }
}
