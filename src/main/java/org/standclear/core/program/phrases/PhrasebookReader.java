package org.standclear.core.program.phrases;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Posture;
import org.standclear.core.program.CommentDeclaration;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.StatedDeclaration;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Reading;
import org.standclear.core.text.Words;

/** Reads programs by a phrasebook. */
public final class PhrasebookReader implements ProgramReader {

    private final Phrasebook book;
    private final String name;

    /** A reader by a book; answers carry the book's name. */
    public PhrasebookReader(Phrasebook book) {
        this(book, "phrasebook " + book.name());
    }

    /** A reader by a book, under a name that also tells its version. */
    public PhrasebookReader(Phrasebook book, String name) {
        this.book = book;
        this.name = name;
    }

    /** Whether the book has a meaning for the first line that says something. */
    public boolean understandsTheFirstLine(String text) {
        return new LineMatcher(book).understandsTheFirstLine(text);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Reading<MotionPlan> read(String text) {
        return Reading.of(() -> plan(text));
    }

    private MotionPlan plan(String text) {
        List<MatchedLine> lines = new LineMatcher(book).lines(text);
        SpokenProgram program = SpokenProgram.of(lines);
        SpokenPoints points = SpokenPoints.of(lines);
        List<StatedDeclaration> stated =
                CommentDeclaration.in(comments(lines)).stream().toList();
        stated.forEach(statement -> requireStart(statement, points));
        SpokenRun run = new SpokenRun(program, points, lines.size());
        run.all();
        int total = (int) lines.stream().filter(MatchedLine::saysSomething).count();
        List<Integer> notUnderstood = List.copyOf(program.notUnderstood());
        if (total == 0 || notUnderstood.isEmpty() && run.steps().isEmpty()) {
            throw new BadInputException(0, "no line of the file moves anything; write at least one move or wait");
        }
        return new MotionPlan(
                name,
                title(lines),
                points.byName(),
                run.steps(),
                stated,
                run.found(),
                new MotionPlan.Coverage(total - notUnderstood.size(), total, notUnderstood),
                List.of());
    }

    /** The contents of the comments, line by line. */
    private static List<Optional<String>> comments(List<MatchedLine> lines) {
        return lines.stream().map(PhrasebookReader::comment).toList();
    }

    private static Optional<String> comment(MatchedLine line) {
        if (line.kind() == MatchedLine.Kind.EMPTY) {
            return Optional.of("");
        }
        return line.means(Meaning.COMMENT) ? Optional.of(line.parts().getOrDefault(Part.TEXT, "")) : Optional.empty();
    }

    private static @Nullable String title(List<MatchedLine> lines) {
        return lines.stream()
                .filter(line -> line.means(Meaning.NO_MOTION) && line.has(Part.TITLE))
                .map(line -> line.text(Part.TITLE))
                .findFirst()
                .orElse(null);
    }

    private static void requireStart(StatedDeclaration statement, SpokenPoints points) {
        String start = statement.values().start();
        if (start != null && !points.byName().containsKey(start)) {
            throw new BadInputException(
                    statement.lineOf(DeclarationField.START),
                    "start names " + Words.quoted(start) + ", which no line of the file defines as a point");
        }
    }

    @Override
    public String needs(Arm arm) {
        if (arm.takes(Posture.ALL.get(0))) {
            return "says no posture; let its phrase have the parts axis1 to axis6, or x, y, z, yaw, pitch, roll, shoulder,"
                    + " elbow and wrist, in the pattern or fixed";
        }
        return arm.hasElbow()
                ? "names no side of the elbow; let its phrase have the part elbow, in the pattern or fixed: {elbow: right}"
                : arm.needs();
    }
}
