package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.StepLines;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.timeline.Moment;

/** The tool point's way on a view, cut where its speed passes from one band to the next. */
final class WayLines {

    /** Steps beyond this many are drawn together: the page's table has no rows for them either. */
    static final int STEPS_OF_THEIR_OWN = 300;

    /** Of more steps than this the lines are drawn thin: they lie over each other. */
    static final int MOST_APART = 150;

    /** A piece shorter than this joins its faster neighbour. */
    private static final double SHORT = 3;

    private final View view;
    private final double limit;
    private final Troubled troubled;

    WayLines(View view, double limitMmS, Troubled troubled) {
        this.view = view;
        this.limit = limitMmS;
        this.troubled = troubled;
    }

    /** The lines of every step; of many steps the later ones together. */
    List<StepLines> of(List<OfSpan> spans) {
        List<StepLines> steps = new ArrayList<>();
        Map<SpeedBand, Set<String>> rest = new EnumMap<>(SpeedBand.class);
        for (OfSpan span : spans) {
            if (!span.hasWay()) {
                continue;
            }
            List<Piece> pieces = pieces(span);
            if (steps.size() < STEPS_OF_THEIR_OWN) {
                List<Line> lines = new ArrayList<>();
                if (troubled.isAt(span.span().step().step())) {
                    lines.add(new Line("way-trouble", whole(pieces)));
                }
                pieces.forEach(piece -> lines.add(new Line(piece.band().look(), PathText.line(piece.places()))));
                steps.add(new StepLines(span.span().key(), StepWords.of(span.span()), lines));
            } else {
                pieces.forEach(piece -> rest.computeIfAbsent(piece.band(), band -> new LinkedHashSet<>())
                        .add(PathText.line(piece.places())));
            }
        }
        if (!rest.isEmpty()) {
            List<Line> lines = new ArrayList<>();
            rest.forEach((band, paths) -> lines.add(new Line(band.look(), String.join("", paths))));
            steps.add(new StepLines("rest", "later steps", lines));
        }
        return steps;
    }

    private static String whole(List<Piece> pieces) {
        List<Place> places = new ArrayList<>();
        pieces.forEach(piece -> places.addAll(piece.places()));
        return PathText.line(places);
    }

    /** A stretch of the way in one band. */
    private record Piece(SpeedBand band, List<Place> places) {

        double length() {
            double sum = 0;
            for (int i = 1; i < places.size(); i++) {
                sum += places.get(i).distance(places.get(i - 1));
            }
            return sum;
        }
    }

    private List<Piece> pieces(OfSpan span) {
        List<Piece> pieces = new ArrayList<>();
        Moment before = span.moments().get(0);
        for (Moment moment : span.moments().subList(1, span.moments().size())) {
            if (before.tool() != null && moment.tool() != null) {
                add(pieces, band(span, before, moment), view.at(before.tool()), view.at(moment.tool()));
            }
            before = moment;
        }
        return joined(pieces);
    }

    private SpeedBand band(OfSpan span, Moment a, Moment b) {
        return span.span().isUnknown()
                ? SpeedBand.UNKNOWN
                : SpeedBand.of(Math.max(a.toolSpeedMmS(), b.toolSpeedMmS()), limit);
    }

    private static void add(List<Piece> pieces, SpeedBand band, Place from, Place to) {
        Piece last = pieces.isEmpty() ? null : pieces.get(pieces.size() - 1);
        if (last != null && last.band() == band) {
            last.places().add(to);
        } else {
            pieces.add(new Piece(band, new ArrayList<>(List.of(from, to))));
        }
    }

    /** Pieces too short to be seen join the one before, which then counts as the faster of the two. */
    private static List<Piece> joined(List<Piece> pieces) {
        List<Piece> joined = new ArrayList<>();
        for (Piece piece : pieces) {
            Piece last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last != null && (piece.length() < SHORT || last.length() < SHORT || piece.band() == last.band())) {
                List<Place> places = new ArrayList<>(last.places());
                places.addAll(piece.places().subList(1, piece.places().size()));
                joined.set(joined.size() - 1, new Piece(last.band().orFaster(piece.band()), places));
            } else {
                joined.add(piece);
            }
        }
        return joined;
    }
}
