package org.standclear.core.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.geometry.Vector;
import org.standclear.core.motion.AxisCourse;
import org.standclear.core.motion.Profile;
import org.standclear.core.motion.ProgramMotion;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.motion.StepMotion.Trace;
import org.standclear.core.motion.ToolPath;

/**
 * One pass of a program in time, every step as it is listed: for a loop the first step and the closing move both. Reads
 * the paths and profiles that the check was made with. Not for several threads at once.
 */
public final class Timeline {

    private final List<Span> spans;
    private final int[] lastMove;
    private final boolean isWhole;

    /** The course of the span read last: spans are mostly read in their order. */
    private @Nullable AxisCourse course;

    private int courseOf = -1;

    private Timeline(List<Span> spans, boolean isWhole) {
        this.spans = List.copyOf(spans);
        this.isWhole = isWhole;
        this.lastMove = new int[spans.size()];
        int last = -1;
        for (int i = 0; i < lastMove.length; i++) {
            last = spans.get(i).step().trace() != null ? i : last;
            lastMove[i] = last;
        }
    }

    /** The motion as the power mode holds it. */
    public static Timeline held(ProgramMotion motion, int mostSteps) {
        return of(motion, mostSteps, StepMotion::durationS, Trace::held);
    }

    /** The motion in full power. */
    public static Timeline fullPower(ProgramMotion motion, int mostSteps) {
        return of(motion, mostSteps, StepMotion::fullPowerDurationS, Trace::fullPower);
    }

    private static Timeline of(
            ProgramMotion motion,
            int mostSteps,
            Function<StepMotion, @Nullable Double> duration,
            Function<Trace, @Nullable Profile> profile) {
        List<Span> spans = new ArrayList<>();
        double from = 0;
        for (StepMotion step :
                motion.steps().subList(0, Math.min(mostSteps, motion.steps().size()))) {
            Double seconds = duration.apply(step);
            double until = from + (seconds == null ? 0 : seconds);
            Trace trace = step.trace();
            spans.add(new Span(spans.size(), step, from, until, trace == null ? null : profile.apply(trace)));
            from = until;
        }
        return new Timeline(spans, motion.steps().size() <= mostSteps);
    }

    /** The steps in their order. */
    public List<Span> spans() {
        return spans;
    }

    /** Whether no step was left out. */
    public boolean isWhole() {
        return isWhole;
    }

    /** How long all of it takes, s; steps that are not known count nothing. */
    public double seconds() {
        return spans.isEmpty() ? 0 : spans.get(spans.size() - 1).until();
    }

    /** The span in which a time lies; of several the last one that takes time, else the last. */
    public Span spanAt(double seconds) {
        int low = 0;
        int high = spans.size() - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (spans.get(middle).until() > seconds) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return spans.get(low);
    }

    /** What the arm does at a time. */
    public Moment at(double seconds) {
        return at(spanAt(seconds), seconds);
    }

    /** What the arm does at a time of one span. */
    public Moment at(Span span, double seconds) {
        Trace trace = span.step().trace();
        if (trace == null) {
            return standing(span, seconds);
        }
        Profile profile = span.profile();
        ToolPath path = trace.path();
        if (profile == null) {
            return moment(span, seconds, path, path.length(), 0);
        }
        double place = profile.placeAfter(seconds - span.from());
        return moment(span, seconds, path, place, profile.speedAt(place));
    }

    /** The arm after a part of a move's way, from 0 to 1, whether or not its speeds are known. */
    public Moment along(Span span, double part) {
        Trace trace = span.step().trace();
        if (trace == null) {
            throw new IllegalArgumentException("step " + span.name() + " has no way");
        }
        return moment(span, span.from(), trace.path(), trace.path().length() * part, 0);
    }

    private Moment moment(Span span, double seconds, ToolPath path, double place, double speed) {
        AxisCourse axes = course(span.index(), path);
        AxisValues rates = axes == null ? null : axes.rates(place);
        return new Moment(
                seconds,
                span,
                path.at(place),
                axes == null ? null : axes.at(place),
                rates == null ? null : rates.times(speed),
                speed == 0 ? 0 : speed * path.toolSpeed(place));
    }

    private @Nullable AxisCourse course(int index, ToolPath path) {
        if (courseOf != index) {
            course = path.axes().orElse(null);
            courseOf = index;
        }
        return course;
    }

    /** Between moves the arm stands where the last one brought it, or where the next one begins. */
    private Moment standing(Span span, double seconds) {
        int last = lastMove[span.index()];
        if (last >= 0) {
            Trace trace = spans.get(last).step().trace();
            if (trace != null) {
                return moment(span, last, seconds, trace.path(), trace.path().length());
            }
        }
        for (Span next : spans.subList(span.index(), spans.size())) {
            Trace trace = next.step().trace();
            if (trace != null) {
                return moment(span, next.index(), seconds, trace.path(), 0);
            }
        }
        Vector there = span.step().target() == null
                ? null
                : span.step().target().pose().place();
        return new Moment(seconds, span, there, null, null, 0);
    }

    private Moment moment(Span span, int move, double seconds, ToolPath path, double place) {
        AxisCourse axes = course(move, path);
        return new Moment(seconds, span, path.at(place), axes == null ? null : axes.at(place), null, 0);
    }
}
