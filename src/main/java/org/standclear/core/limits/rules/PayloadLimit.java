package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.core.limits.CarriedPart;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.quantity.Tolerance;

/** Fitted tool and part together are at or below what cell and arm allow (cell). */
final class PayloadLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Double ofCell = program.cell().limits().payloadKg();
        Double ofArm = program.cell().armFacts().ratedPayloadKg();
        LimitInForce limit = limit(ofCell, ofArm);
        CarriedPart carried = program.part();
        // of a named part that is not known, the declared mass is the least there is
        Double part = carried.massKg() == null ? program.declaration().partKg() : carried.massKg();
        double tool = program.cell().fittedTool().massKg();
        double known = tool + (part == null ? 0 : part);
        Integer line = program.declared()
                .lineOf(program.declaration().part() == null ? DeclarationField.PART : DeclarationField.PART_NAME);
        if (limit != null && !Tolerance.isWithin(known, limit.value())) {
            String says = words(tool, part) + " weigh " + up(known, 3) + " kg; " + plain(limit.value()) + " kg is "
                    + limit.words() + "." + carried.remark() + " Take a lighter part or another tool.";
            return Stream.of(new Finding.Outside(details(known, limit, says).onLine(line)));
        }
        if (part == null || carried.massKg() == null) {
            return Stream.of(Finding.notCheckable(
                    Details.of(Check.PAYLOAD, carried.why()).onLine(line)));
        }
        if (limit == null || ofCell == null || ofArm == null) {
            return Stream.of(Finding.notCheckable(Details.of(
                    Check.PAYLOAD,
                    "The cell file gives no " + (ofCell == null ? "payload-kg" : "rated-payload-kg")
                            + ", so the payload cannot be checked. Whoever keeps the cell file has to add it.")));
        }
        String says = words(tool, part) + " weigh " + up(known, 3) + " kg of " + plain(limit.value()) + " kg, "
                + limit.words() + "." + carried.remark();
        return Stream.of(new Finding.Within(details(known, limit, says)));
    }

    private static String words(double tool, @Nullable Double part) {
        return part == null
                ? "The tool alone would"
                : "Tool (" + plain(tool) + " kg) and part (" + plain(part) + " kg)";
    }

    private static Details details(double mass, LimitInForce limit, String says) {
        return Details.of(Check.PAYLOAD, says)
                .comparing(mass, limit.value(), "kg")
                .from(limit.from());
    }

    private static @Nullable LimitInForce limit(@Nullable Double ofCell, @Nullable Double ofArm) {
        if (ofArm != null && (ofCell == null || ofArm < ofCell)) {
            return new LimitInForce(ofArm, LimitSource.ARM);
        }
        return ofCell == null ? null : new LimitInForce(ofCell, LimitSource.CELL);
    }
}
