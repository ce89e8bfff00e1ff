package org.standclear.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.CellFacts.Fact;
import org.standclear.cell.CellFacts.Group;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.arm.articulated.ArticulatedArm;
import org.standclear.core.arm.articulated.DhRow;
import org.standclear.core.cell.ArmFacts;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellLimits;
import org.standclear.core.cell.ContactLimit;
import org.standclear.core.cell.KeepOut;
import org.standclear.core.cell.SeparationLimit;
import org.standclear.core.cell.Tool;
import org.standclear.core.geometry.Box;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.ShownNumber;

/** Says what a cell file describes, one fact a line, each limit with what it rests on. */
final class CellWords {

    private static final String HOUSE_RULE = "house rule";
    private static final String OWN = "this cell";
    private static final String NO_LIMIT = "no limit set";

    private final List<Fact> facts = new ArrayList<>();

    private CellWords() {}

    static CellFacts of(CellDescription cell) {
        CellWords words = new CellWords();
        words.limits(cell);
        words.arm(cell);
        cell.tools().forEach(words::tool);
        Vector offset = cell.fittedTool().offset();
        return new CellFacts(
                cell.name(),
                cell.version(),
                cell.fittedTool().code(),
                List.of(offset.x(), offset.y(), offset.z()),
                cell.limits().power().word(),
                cell.limits().overridePercent(),
                words.facts);
    }

    private void limits(CellDescription cell) {
        CellLimits limits = cell.limits();
        add(Group.MAIN_LIMIT, "Power", limits.power().word(), "", HOUSE_RULE);
        add(
                Group.MAIN_LIMIT,
                "Tool speed",
                number(limits.toolSpeedMmS()),
                "mm/s",
                "ISO 10218-1 reduced speed, 250 mm/s");
        add(
                Group.MAIN_LIMIT,
                "Override",
                number(limits.overridePercent()),
                "%",
                HOUSE_RULE + " (50 %: common practice)");
        given("Moving part speed", limits.movingPartSpeedMmS(), "mm/s", "ISO 10218-2:2025 5.5.6.1, as quoted publicly");
        add(Group.LIMIT, "Moving part speed is", limits.movingPartRule().word(), "", HOUSE_RULE);
        add(Group.MAIN_LIMIT, "Payload", shown(limits.payloadKg()), unit(limits.payloadKg(), "kg"), OWN);
        add(Group.LIMIT, "Fitted tool", cell.fittedTool().code(), "", OWN);
        add(
                Group.LIMIT,
                "Space",
                limits.space() == null ? NO_LIMIT : box(limits.space()),
                unit(limits.space(), "mm"),
                OWN);
        for (KeepOut keepOut : limits.keepOut()) {
            add(Group.LIMIT, "Keep out: " + keepOut.name(), box(keepOut.box()), "mm", OWN);
        }
        if (limits.keepOut().isEmpty()) {
            add(Group.LIMIT, "Keep out", NO_LIMIT, "", OWN);
        }
        contact(limits.contact());
        add(Group.LIMIT, "Stand line from " + cell.arm().middle(), number(limits.standLineMm()), "mm", OWN);
        separation(limits.separation());
    }

    private void contact(@Nullable ContactLimit contact) {
        String source = "ISO/TS 15066:2016 Annex A; estimate";
        if (contact == null) {
            add(Group.LIMIT, "Contact", NO_LIMIT, "", source);
            return;
        }
        String regions = contact.regions().stream()
                .map(BodyRegion::word)
                .map(word -> word.replace('-', ' '))
                .collect(Collectors.joining(", "));
        add(Group.LIMIT, "Contact, " + contact.rule().word(), regions, "", source);
    }

    private void separation(@Nullable SeparationLimit separation) {
        String source = "ISO/TS 15066:2016 5.5.4, ISO 13855";
        if (separation == null) {
            add(Group.LIMIT, "Separation", NO_LIMIT, "", source);
            return;
        }
        add(
                Group.LIMIT,
                "Separation, " + separation.rule().word(),
                String.format(
                        Locale.ROOT,
                        "person %s mm/s, intrusion %s mm, uncertainty %s + %s mm",
                        number(separation.humanSpeedMmS()),
                        number(separation.intrusionMm()),
                        number(separation.personUncertaintyMm()),
                        number(separation.robotUncertaintyMm())),
                "",
                source);
    }

    private void arm(CellDescription cell) {
        ArmFacts arm = cell.armFacts();
        machine("Arm", cell.arm().kind(), "");
        if (cell.arm() instanceof ScaraArm scara) {
            machine("Links", number(scara.firstLink()) + " and " + number(scara.secondLink()), "mm");
        }
        if (cell.arm() instanceof ArticulatedArm six) {
            six.rows().forEach(this::link);
            machine(
                    "Axis values for a pose",
                    six.hasClosedForm() ? "in closed form" : "step by step, to 0.0000001 mm",
                    "");
        }
        for (Axis axis : cell.arm().axes()) {
            axis(axis);
        }
        machine("Fastest straight move", number(arm.straightSpeedMmS()), "mm/s");
        machine("Acceleration of straight moves", number(arm.straightAccelerationMmS2()), "mm/s\u00b2");
        machine("Moving mass", number(arm.movingMassKg()), "kg");
        machine("Rated payload", shown(arm.ratedPayloadKg()), unit(arm.ratedPayloadKg(), "kg"));
        Double ceiling = arm.reducedPowerSpeedMmS();
        add(
                Group.MACHINE,
                "Reduced power holds the tool at",
                ceiling == null ? "never verified" : number(ceiling),
                unit(ceiling, "mm/s"),
                "typed in the cell file; measure at the cell, at 100 % and at the override in use");
        add(
                Group.MACHINE,
                "Stop",
                number(arm.reactionS()) + " s reaction, " + number(arm.stoppingS()) + " s stopping",
                "",
                "typed in the cell file; measure at the cell, at full load and reach");
    }

    private void link(DhRow row) {
        machine(
                "Link",
                "a " + number(row.a()) + " mm, alpha " + number(row.alpha()) + " deg, d " + number(row.d())
                        + " mm, theta " + number(row.theta()) + " deg",
                "");
    }

    private void axis(Axis axis) {
        String unit = axis.unit();
        String speed = axis.speed() == null ? "speed not given" : number(axis.speed()) + " " + unit + "/s";
        machine(
                "Axis " + axis.name(),
                range(axis.range()) + " " + unit + ", " + speed + ", " + number(axis.acceleration()) + " " + unit
                        + "/s\u00b2",
                "");
    }

    private void tool(Tool tool) {
        Vector offset = tool.offset();
        machine(
                "Tool " + tool.code(),
                number(tool.massKg()) + " kg, offset " + number(offset.x()) + ", " + number(offset.y()) + ", "
                        + number(offset.z()) + " mm, overhang " + number(tool.overhangMm()) + " mm"
                        + (tool.edges() ? ", sharp edges" : ""),
                "");
    }

    private void machine(String label, String value, String unit) {
        add(Group.MACHINE, label, value, unit, "");
    }

    private void given(String label, @Nullable Double value, String unit, String source) {
        add(Group.LIMIT, label, shown(value), unit(value, unit), source);
    }

    private void add(Group group, String label, String value, String unit, String source) {
        facts.add(new Fact(group, label, value, unit, source));
    }

    private static String unit(@Nullable Object value, String unit) {
        return value == null ? "" : unit;
    }

    private static String shown(@Nullable Double value) {
        return value == null ? NO_LIMIT : number(value);
    }

    private static String box(Box box) {
        return "x " + range(box.x()) + ", y " + range(box.y()) + ", z " + range(box.z());
    }

    private static String range(Interval interval) {
        return number(interval.min()) + " to " + number(interval.max());
    }

    private static String number(double value) {
        return ShownNumber.plain(value);
    }
}
