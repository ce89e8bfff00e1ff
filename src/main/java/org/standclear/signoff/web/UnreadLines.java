package org.standclear.signoff.web;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers;

/** The lines of a program that its reader could not read, so that who waives them has them before their eyes. */
@Component
class UnreadLines {

    private static final int MOST_LINES = 200;
    private static final int MOST_CHARACTERS = 500;

    private final ProgramChecks checks;
    private final Programs programs;

    UnreadLines(ProgramChecks checks, Programs programs) {
        this.checks = checks;
        this.programs = programs;
    }

    /** A line as it stands in the file. */
    record Line(int number, String text) {}

    /**
     * What is shown of them.
     *
     * @param asked whether there are any, and reading them has to be confirmed
     * @param more how many are not shown here; -1 when the file could not be read again just now
     */
    record Shown(boolean asked, List<Line> lines, int more) {}

    Shown of(Waivers.Question question) {
        StoredAnswer answer = question.prepared().answer();
        Revision revision = question.prepared().revision();
        List<String> blocking =
                question.blocking().stream().map(Waivers.Blocking::check).toList();
        if (answer == null || revision == null || !Waiver.setsUnreadLinesAside(blocking)) {
            return new Shown(false, List.of(), 0);
        }
        Optional<List<Integer>> numbers = checks.again(answer.id())
                .map(again -> again.program().plan().coverage().notUnderstood());
        if (numbers.isEmpty() || programs.isTakenOut(revision.id())) {
            return new Shown(true, List.of(), -1);
        }
        List<String> text = new String(programs.bytes(revision.id()), StandardCharsets.UTF_8)
                .lines()
                .toList();
        List<Line> lines = numbers.get().stream()
                .filter(number -> number <= text.size())
                .limit(MOST_LINES)
                .map(number -> new Line(number, cut(text.get(number - 1))))
                .toList();
        return new Shown(true, lines, numbers.get().size() - lines.size());
    }

    private static String cut(String line) {
        return line.length() <= MOST_CHARACTERS ? line : line.substring(0, MOST_CHARACTERS) + " … (goes on)";
    }
}
