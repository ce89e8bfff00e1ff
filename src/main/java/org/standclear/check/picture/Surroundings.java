package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.quantity.ShownNumber;

/** Where people stand: the stand line, what the arm reaches in this program, and how far people have to keep from it. */
final class Surroundings {

    private static final int SIZE = 420;
    private static final int MARGIN = 12;

    private final CheckAnswer answer;
    private final CellDescription cell;
    private final List<Line> lines = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();
    private final List<String> says = new ArrayList<>();

    Surroundings(CheckAnswer answer) {
        this.answer = answer;
        this.cell = answer.program().cell();
    }

    Drawing drawing() {
        double standLine = cell.limits().standLineMm();
        Double needed = needed();
        double most = Math.max(Math.max(standLine, needed == null ? 0 : needed), Math.max(radius(), 1));
        View view = View.of(
                View.Axes.X_AND_Y,
                new Extent().with(-most, -most).with(most, most).rounded(),
                SIZE,
                MARGIN);
        Place foot = view.at(0, 0);
        ring(view, "covered", radius(), "the arm gets out to " + ShownNumber.up(radius(), 0) + " mm", 16);
        if (needed != null) {
            ring(view, "keep-away", needed, "people need " + ShownNumber.up(needed, 0) + " mm", 16);
        }
        ring(view, "stand-line", standLine, "stand line " + ShownNumber.plain(standLine) + " mm", -16);
        lines.add(new Line("foot", PathText.circle(foot, 4)));
        return new Drawing(
                "surroundings",
                "Where people stand",
                "Circles around axis 1: " + String.join("; ", says) + ".",
                SIZE,
                view.height(),
                lines,
                List.of(),
                words);
    }

    /** How far the arm gets from axis 1: tool and overhang, or its own links. */
    private double radius() {
        return Math.max(
                answer.figures().knownRadiusMm() + cell.fittedTool().overhangMm(),
                cell.arm().ownRadius());
    }

    /** Radius and separation distance; null when the cell sets none or the speed is not known. */
    private @Nullable Double needed() {
        Double separation = answer.figures().separationMm();
        return separation == null ? null : Double.valueOf(radius() + separation);
    }

    /** A ring with its words under its top, or above its bottom where the second is negative. */
    private void ring(View view, String look, double mm, String text, double down) {
        Place foot = view.at(0, 0);
        double drawn = view.length(mm);
        lines.add(new Line(look, PathText.circle(foot, drawn)));
        double y = down > 0 ? foot.y() - drawn + down : foot.y() + drawn + down + 6;
        words.add(Word.at(new Place(foot.x(), y), "middle", look + "-word", text));
        says.add(text);
    }
}
