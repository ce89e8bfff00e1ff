package org.standclear.core.limits.rules;

import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.text.Words;

/** The declared tool is the fitted one (cell); notes what of the fitted tool no other rule counts. */
final class ToolFitted implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Stream<Finding> uncounted = program.cell().fittedTool().uncounted().stream()
                .map(says -> new Finding.Notice(Details.of(Check.TOOL_FITTED, says)));
        return Stream.concat(Stream.of(fitted(program)), uncounted);
    }

    private static Finding fitted(CheckedProgram program) {
        String fitted = program.cell().fittedTool().code();
        String declared = program.declaration().tool();
        if (declared == null) {
            return Finding.notCheckable(Details.of(
                    Check.TOOL_FITTED,
                    "No tool is declared. Declare tool: with the code on the tool; " + fitted + " is fitted."));
        }
        if (!declared.equals(fitted)) {
            String says = "The declaration says tool " + Words.quoted(declared) + "; " + fitted
                    + " is fitted on this cell. Declare the fitted tool, or book a cell that has yours.";
            return new Finding.Outside(Details.of(Check.TOOL_FITTED, says)
                    .onLine(program.declared().lineOf(DeclarationField.TOOL)));
        }
        return new Finding.Within(Details.of(Check.TOOL_FITTED, "The declared tool " + fitted + " is fitted."));
    }
}
