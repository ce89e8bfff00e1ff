package org.standclear.core.program.phrases;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Words;

/** The lines of a program put together: what belongs to a loop, what to a named section. */
final class SpokenProgram {

    private final List<Item> main = new ArrayList<>();
    private final Map<String, List<Item>> sections = new HashMap<>();
    private final TreeSet<Integer> notUnderstood = new TreeSet<>();
    private final Deque<Loop> open = new ArrayDeque<>();
    private final List<MatchedLine> calls = new ArrayList<>();
    private List<Item> current = main;
    private int sectionLine;

    /** A line, or a loop of them. */
    sealed interface Item {}

    /** One line. */
    record Line(MatchedLine line) implements Item {}

    /** What stands between the begin and the end of a loop. */
    record Loop(MatchedLine begin, List<Item> body) implements Item {}

    private SpokenProgram() {}

    static SpokenProgram of(List<MatchedLine> lines) {
        SpokenProgram program = new SpokenProgram();
        lines.stream().filter(MatchedLine::saysSomething).forEach(program::take);
        program.requireClosed();
        program.calls.stream()
                .filter(call -> !program.sections.containsKey(call.text(Part.SECTION)))
                .forEach(call -> program.notUnderstood.add(call.number()));
        return program;
    }

    List<Item> main() {
        return main;
    }

    /** The items of a section; none when the file has no such section. */
    List<Item> section(String name) {
        return sections.getOrDefault(name, List.of());
    }

    /** The numbers of the lines that are not understood; more can be added as the program is gone through. */
    TreeSet<Integer> notUnderstood() {
        return notUnderstood;
    }

    private List<Item> target() {
        Loop loop = open.peek();
        return loop == null ? current : loop.body();
    }

    private void take(MatchedLine line) {
        switch (line.kind()) {
            case SECTION_BEGIN -> begin(line);
            case SECTION_END -> end(line);
            case PHRASE -> phrase(line);
            default -> notUnderstood.add(line.number());
        }
    }

    private void begin(MatchedLine line) {
        if (current != main || !open.isEmpty()) {
            throw new BadInputException(
                    line.number(), "a section begins inside of another section or of a loop; end that first");
        }
        String name = line.text(Part.SECTION);
        current = new ArrayList<>();
        sectionLine = line.number();
        if (sections.put(name, current) != null) {
            throw new BadInputException(
                    line.number(), "the section " + Words.quoted(name) + " stands here a second time");
        }
    }

    private void end(MatchedLine line) {
        if (current == main || !open.isEmpty()) {
            throw new BadInputException(
                    line.number(), "a section ends here that has not begun, or a loop in it is open");
        }
        current = main;
    }

    private void phrase(MatchedLine line) {
        if (line.means(Meaning.LOOP_BEGIN)) {
            Loop loop = new Loop(line, new ArrayList<>());
            target().add(loop);
            open.push(loop);
        } else if (line.means(Meaning.LOOP_END)) {
            if (open.isEmpty()) {
                throw new BadInputException(line.number(), "a loop ends here that has not begun");
            }
            open.pop();
        } else {
            if (line.means(Meaning.CALL)) {
                calls.add(line);
            }
            target().add(new Line(line));
        }
        if (open.size() > SpokenRun.DEEPEST) {
            throw new BadInputException(
                    line.number(), "loops stand in each other more than " + SpokenRun.DEEPEST + " deep");
        }
    }

    private void requireClosed() {
        Loop loop = open.peek();
        if (loop != null) {
            throw new BadInputException(loop.begin().number(), "the loop that begins here has no end");
        }
        if (current != main) {
            throw new BadInputException(sectionLine, "the section that begins here has no end");
        }
    }
}
