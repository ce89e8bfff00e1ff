package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.standclear.core.motion.Profile;
import org.standclear.core.timeline.Moment;
import org.standclear.core.timeline.Span;
import org.standclear.core.timeline.Timeline;

/** The moments of each step that drawings are made from: many for a short program, few a step for a long one. */
record Samples(Timeline timeline, List<OfSpan> spans) {

    private static final int ALL = 12_000;
    private static final int FEWEST = 4;
    private static final int MOST = 48;

    Samples {
        spans = List.copyOf(spans);
    }

    /** The moments of one step, from its beginning to its end. */
    record OfSpan(Span span, List<Moment> moments) {

        OfSpan {
            moments = List.copyOf(moments);
        }

        /** Whether the step moves the arm along a way that is known. */
        boolean hasWay() {
            return span.step().trace() != null;
        }

        /** The moment at its end. */
        Moment last() {
            return moments.get(moments.size() - 1);
        }
    }

    static Samples of(Timeline timeline) {
        int each = Math.max(
                FEWEST, Math.min(MOST, ALL / Math.max(1, timeline.spans().size())));
        List<OfSpan> spans = new ArrayList<>();
        for (Span span : timeline.spans()) {
            spans.add(new OfSpan(span, moments(timeline, span, each)));
        }
        return new Samples(timeline, spans);
    }

    private static List<Moment> moments(Timeline timeline, Span span, int each) {
        Profile profile = span.profile();
        if (profile == null) {
            return span.step().trace() != null ? way(timeline, span, each) : ends(timeline, span);
        }
        double ramp = profile.peak() / profile.acceleration();
        List<Moment> moments = new ArrayList<>();
        double before = -1;
        for (int i = 0; i <= each; i++) {
            double seconds = profile.duration() * i / each;
            for (double corner : new double[] {ramp, profile.duration() - ramp}) {
                if (corner > before && corner < seconds) {
                    moments.add(timeline.at(span, span.from() + corner));
                    before = corner;
                }
            }
            moments.add(timeline.at(span, i == each ? span.until() : span.from() + seconds));
            before = seconds;
        }
        return moments;
    }

    private static List<Moment> ends(Timeline timeline, Span span) {
        return List.of(timeline.at(span, span.from()), timeline.at(span, span.until()));
    }

    /** A way whose speeds are not known is gone along evenly. */
    private static List<Moment> way(Timeline timeline, Span span, int each) {
        return IntStream.rangeClosed(0, each)
                .mapToObj(i -> timeline.along(span, (double) i / each))
                .toList();
    }
}
