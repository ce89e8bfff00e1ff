package org.standclear.core.program.blocks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Posture;
import org.standclear.core.program.CommentDeclaration;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.StatedDeclaration;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;

/**
 * Reads blocks of ISO 6983: G0, G1, G2, G3, G4, G17, G20, G21, G90, G91, the words X Y Z C F N, I J R with arcs, M2 and
 * M30, and comments in brackets or after a semicolon; what the standard has no words for, where the arm stands before the
 * first block and in which posture it reaches its points, is said in comments. A line with anything else is not understood, and nothing of it is
 * done.
 */
public final class BlockReader implements ProgramReader {

    /** The name that answers carry. */
    public static final String NAME = "iso-6983";

    private static final Pattern FIRST = Pattern.compile("^[\\s\\uFEFF]*(%\\s*$|[A-Za-z] *[-+.0-9])");

    /** Whether the first line that is no comment begins as a block does: a letter and a number, or a lone %. */
    public static boolean isMeantBy(String text) {
        return text.lines()
                .filter(line -> !line.isBlank() && Block.comment(line).isEmpty())
                .findFirst()
                .filter(line -> FIRST.matcher(line.length() > 99 ? line.substring(0, 99) : line)
                        .find())
                .isPresent();
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public Reading<MotionPlan> read(String text) {
        return Reading.of(() -> plan(InputText.plain(text)));
    }

    private static MotionPlan plan(String text) {
        List<StatedDeclaration> stated =
                CommentDeclaration.in(text, Block::comment).stream().toList();
        BlockPoints points = new BlockPoints();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            points.note(lines.get(i), i + 1);
        }
        BlockProgram program = new BlockProgram(points, points.start(stated));
        List<Integer> notUnderstood = new ArrayList<>();
        int total = 0;
        for (int i = 0; i < lines.size(); i++) {
            Optional<Block> block = isOverlooked(lines.get(i)) ? Optional.empty() : Block.of(lines.get(i), i + 1);
            if (block.isEmpty() || !block.get().isEmpty()) {
                total++;
            }
            if (block.isEmpty() || !block.get().isEmpty() && !program.take(block.get(), i + 1)) {
                notUnderstood.add(i + 1);
            }
        }
        if (total == 0) {
            throw new BadInputException(0, "the file has no blocks");
        }
        if (notUnderstood.isEmpty() && program.steps().isEmpty()) {
            throw new BadInputException(0, "no block of the file moves anything; write at least one move or dwell");
        }
        points.requireStarts(stated);
        return new MotionPlan(
                NAME,
                null,
                points.byName(),
                program.steps(),
                stated,
                List.of(),
                new MotionPlan.Coverage(total - notUnderstood.size(), total, notUnderstood),
                program.notes());
    }

    /** Whether a posture stands beside the words of a block, where nobody reads it. */
    private static boolean isOverlooked(String line) {
        return line.length() < 1000 && Block.comment(line).isEmpty() && BlockPosture.isBeside(line);
    }

    /** There are no words for it: a comment says it. */
    @Override
    public String needs(Arm arm) {
        if (arm.takes(Posture.ALL.get(0))) {
            return "says no posture; write a comment such as (posture shoulder front, elbow up, wrist plain, pitch 0, roll"
                    + " 180) before it, which stays in force";
        }
        return arm.hasElbow()
                ? "names no side of the elbow; write a comment such as (posture elbow right) before it, which stays in"
                        + " force"
                : arm.needs();
    }
}
