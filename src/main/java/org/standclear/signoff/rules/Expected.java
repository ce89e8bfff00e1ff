package org.standclear.signoff.rules;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.check.BenchFacts;
import org.standclear.signoff.Part;

/**
 * What answers are compared with.
 *
 * @param fingerprintEnd of the revision on the booking
 * @param declared what the program declares, from the answer of the check
 * @param fittedTool the tool of the cell version in force
 * @param sensitivity as read in today's day test; null when there is none
 * @param names printed names of operator and attendant
 */
public record Expected(
        String fingerprintEnd,
        BenchFacts declared,
        String fittedTool,
        @Nullable String sensitivity,
        Map<Part, String> names) {

    public Expected {
        names = Map.copyOf(names);
    }

    /** The printed name of the other of the two people on the card. */
    String other(Part part) {
        return names.getOrDefault(part == Part.OPERATOR ? Part.ATTENDANT : Part.OPERATOR, "");
    }
}
