package org.standclear.signoff.web;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.core.text.VisibleLine;
import org.standclear.platform.digest.Sha256;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers;

/** The lines of a program that its reader could not read, so that who waives them has them before their eyes. */
@Component
class UnreadLines {

    static final String NOT_NOW =
            "Nobody waives lines that they cannot be shown. Try again in half a minute; if they still"
                    + " do not show, have the file checked anew: put the program on the booking again.";

    private final ProgramChecks checks;
    private final Programs programs;

    UnreadLines(ProgramChecks checks, Programs programs) {
        this.checks = checks;
        this.programs = programs;
    }

    /** A line of the file, with what it hides written out. */
    record Line(int number, String text) {}

    /**
     * What is shown of them.
     *
     * @param asked whether there are any, and reading them has to be confirmed
     * @param whole whether every one of them is here, whole; only then can somebody confirm to have read them
     * @param mark changes with any line, so that what is confirmed is what was shown; empty when they are not all here
     */
    record Shown(boolean asked, List<Line> lines, boolean whole, String mark) {

        private static Shown none(boolean asked) {
            return new Shown(asked, List.of(), false, "");
        }

        /** Why nobody can confirm now, from a page that showed the lines of that mark; empty when one can. */
        String against(@Nullable String shown) {
            if (!asked) {
                return "";
            }
            if (!whole) {
                return NOT_NOW;
            }
            return mark.equals(shown) ? "" : "The page had not shown these lines. Read them below, then confirm.";
        }
    }

    Shown of(Waivers.Question question) {
        StoredAnswer answer = question.prepared().answer();
        Revision revision = question.prepared().revision();
        List<String> blocking =
                question.blocking().stream().map(Waivers.Blocking::check).toList();
        if (answer == null || revision == null || !Waiver.setsUnreadLinesAside(blocking)) {
            return Shown.none(false);
        }
        if (programs.isTakenOut(revision.id())) {
            return Shown.none(true);
        }
        return checks.again(answer.id())
                .map(again -> again.program().plan().coverage().notUnderstood())
                .map(numbers -> shown(numbers, revision))
                .orElse(Shown.none(true));
    }

    private Shown shown(List<Integer> numbers, Revision revision) {
        List<String> text = new String(programs.bytes(revision.id()), StandardCharsets.UTF_8)
                .lines()
                .toList();
        // a number beyond the file would be a line that nobody can be shown
        if (numbers.isEmpty() || numbers.stream().anyMatch(number -> number < 1 || number > text.size())) {
            return Shown.none(true);
        }
        List<Line> lines = numbers.stream()
                .map(number -> new Line(number, VisibleLine.packed(text.get(number - 1))))
                .toList();
        return new Shown(true, lines, true, mark(lines));
    }

    private static String mark(List<Line> lines) {
        String all =
                lines.stream().map(line -> line.number() + " " + line.text()).collect(Collectors.joining("\n"));
        return Sha256.of(all.getBytes(StandardCharsets.UTF_8));
    }
}
