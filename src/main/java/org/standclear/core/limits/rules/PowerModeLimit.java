package org.standclear.core.limits.rules;

import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.core.cell.Power;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Found;

/** The declared power mode, and every one that the file sets, is the cell's (house rule). */
final class PowerModeLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Power cell = program.cell().limits().power();
        Power declared = program.declaration().power();
        Optional<Found> other = program.declared().found(DeclarationField.POWER).stream()
                .filter(found -> found.value() != cell)
                .findFirst();
        if (declared != null && declared != cell) {
            return one(new Finding.Outside(
                    details("The declaration says " + declared.word() + " power; this cell runs in " + cell.word()
                                    + " power. Declare power: " + cell.word() + ", and set it at the robot.")
                            .onLine(program.declared().lineOf(DeclarationField.POWER))));
        }
        if (other.isPresent()) {
            Found found = other.get();
            return one(new Finding.Outside(details("The file sets " + DeclarationField.POWER.shown(found.value())
                            + " power; this cell runs in " + cell.word() + " power. Change it in the file.")
                    .onLine(found.line())));
        }
        if (declared == null) {
            return one(Finding.notCheckable(
                    details("No power mode is declared, so full power was computed with. Declare power: " + cell.word()
                            + ".")));
        }
        return one(new Finding.Within(details("Declared in " + cell.word() + " power, as this cell runs.")));
    }

    private static Details details(String says) {
        return Details.of(Check.POWER_MODE, says);
    }

    private static Stream<Finding> one(Finding finding) {
        return Stream.of(finding);
    }
}
