package org.standclear.run.web;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.cell.CellStop;
import org.standclear.cell.CellStops;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunState;
import org.standclear.run.Runs;
import org.standclear.run.web.BenchView.Stage;
import org.standclear.signoff.Release;
import org.standclear.signoff.SignoffDesk.Standing;

/** Chooses the one act that a bench screen offers, by the state of the booking. */
@Component
class BenchStages {

    private final BenchLists lists;
    private final BenchSwaps swaps;
    private final BenchWatches watches;
    private final Runs runs;
    private final CellStops stops;
    private final People people;
    private final DutyRoster duty;
    private final LabTime labTime;

    BenchStages(
            BenchLists lists,
            BenchSwaps swaps,
            BenchWatches watches,
            Runs runs,
            CellStops stops,
            People people,
            DutyRoster duty,
            LabTime labTime) {
        this.lists = lists;
        this.swaps = swaps;
        this.watches = watches;
        this.runs = runs;
        this.stops = stops;
        this.people = people;
        this.duty = duty;
        this.labTime = labTime;
    }

    BenchDraft choose(BenchDraft draft, Standing standing, SignedInPerson me, Instant now) {
        Booking booking = standing.prepared().booking();
        return switch (booking.state()) {
            case BOOKED, CHECKED, READY -> lists.choose(draft, standing, me, now);
            case RELEASED ->
                BenchSwaps.takesOver(standing, me)
                        ? lists.choose(draft.swap(swaps.of(standing)), standing, me, now)
                        : released(draft, standing, me);
            case RUNNING ->
                BenchSwaps.takesOver(standing, me)
                        ? lists.choose(draft.swap(swaps.of(standing)), standing, me, now)
                        : running(draft, standing, me, now);
            case STOPPED -> stopped(draft, standing, me, now);
            case FINISHED -> closeOut(draft, booking, me);
            case CLOSED_OUT ->
                draft.stage(Stage.CLOSED).head(slot(booking), "Closed out. Thank you.", "The cell is handed back.");
            default ->
                draft.stage(Stage.IDLE)
                        .head(
                                slot(booking),
                                "Nobody runs here now.",
                                "The booking is " + booking.state().words() + ".");
        };
    }

    private BenchDraft released(BenchDraft draft, Standing standing, SignedInPerson me) {
        Booking booking = standing.prepared().booking();
        Release release = standing.release().orElseThrow();
        String until = labTime.time(release.startBy());
        boolean mayStart = booking.operator().equals(me.id()) || me.isLabStaff() || me.is(Role.BENCH);
        String first = release.firstRun()
                ? "First run of this version here, or first after a return to service: "
                        + people.printedName(release.releaser()) + " watches."
                : "";
        String suspended = Objects.requireNonNullElse(release.suspended(), "");
        boolean holds = suspended.isEmpty();
        return draft.stage(Stage.RELEASED)
                .swap(swaps.of(standing))
                .head(
                        slot(booking),
                        holds ? "Released until " + until : "Suspended: another attendant signs first.",
                        holds ? mayStart ? "Log the start, then start the arm." : "" : suspended)
                .release(new BenchView.Released(
                        until, labTime.iso(release.startBy()), release.code(), first, mayStart && holds))
                .mayAct(mayStart || acts(booking, me));
    }

    private BenchDraft running(BenchDraft draft, Standing standing, SignedInPerson me, Instant now) {
        Booking booking = standing.prepared().booking();
        Run run = runs.of(booking.id()).orElseThrow();
        BenchView.Swap swap = swaps.of(standing);
        Release release = standing.release().orElse(null);
        String ends = ends(booking, release, now);
        return draft.stage(Stage.RUNNING)
                .swap(swap)
                .head(
                        slot(booking),
                        ends.isEmpty() ? "Running. Hand on the e-stop." : ends,
                        goesOn(release, ends, BenchSwaps.told(swap)))
                .run(view(run, release, watches.of(run, standing, me, now)))
                .mayAct(acts(booking, me));
    }

    /** Below what ends the run, which is the headline, what goes on with it, each on a line of its own. */
    private String goesOn(@Nullable Release release, String ends, String turn) {
        String watched = release != null && release.firstRun() && ends.isEmpty()
                ? people.printedName(release.releaser()) + " watches this first run."
                : "";
        return Stream.of(turn, watched).filter(line -> !line.isEmpty()).collect(Collectors.joining("\n"));
    }

    private String ends(Booking booking, @Nullable Release release, Instant now) {
        if (!now.isBefore(booking.end())) {
            return "The slot ended at " + labTime.lately(booking.end()) + ". Finish now.";
        }
        Integer limit = release == null ? null : release.passLimit();
        long passes = passesSinceStart(booking);
        if (limit != null && passes >= limit) {
            return passes == limit
                    ? "All declared passes are made. Finish now."
                    : "More passes than the " + limit + " declared. Stop it and finish now.";
        }
        if (release != null && watches.isOver(release, now)) {
            return "The time of a first run is over. Stop it and finish.";
        }
        return "";
    }

    private long passesSinceStart(Booking booking) {
        long passes = 0;
        for (RunEvent event : runs.events(booking.id())) {
            passes = event.kind() == RunEvent.Kind.STARTED ? 0 : passes + (event.kind() == RunEvent.Kind.PASS ? 1 : 0);
        }
        return passes;
    }

    private BenchDraft stopped(BenchDraft draft, Standing standing, SignedInPerson me, Instant now) {
        Booking booking = standing.prepared().booking();
        Run run = runs.of(booking.id()).orElseThrow();
        boolean staff = me.isLabStaff() || me.is(Role.BENCH);
        return draft.stage(Stage.STOPPED)
                .head(
                        slot(booking),
                        "Stopped. Find the cause first.",
                        "Unlatching restarts nothing; staff record the reset.")
                .run(view(run, standing.release().orElse(null), null))
                .people(staff ? resetters(me, now) : List.of())
                .causes(causes(stops.open(booking.cell())))
                .mayAct(acts(booking, me));
    }

    /** Whether a stop on the cell, outside a run, comes before everything else here. */
    static boolean comesFirst(List<CellStop> open, @Nullable Booking booking) {
        return !open.isEmpty() && (booking == null || !booking.state().awaitsCloseOut());
    }

    /** A stop while nothing ran; what was signed for the next run is void. */
    BenchDraft stoppedBetween(BenchDraft draft, List<CellStop> open, String kicker, SignedInPerson me, Instant now) {
        CellStop last = open.get(open.size() - 1);
        String what = last.armStoppedItself() ? "The arm stopped itself at " : "The e-stop was pressed at ";
        boolean staff = me.isLabStaff() || me.is(Role.BENCH);
        return draft.stage(Stage.STOPPED)
                .head(
                        kicker,
                        "Stopped. Find the cause first.",
                        what + labTime.lately(last.at())
                                + ". Unlatching restarts nothing. A technician records the reset,"
                                + " then the list begins anew.")
                .people(staff ? resetters(me, now) : List.of())
                .causes(causes(open));
    }

    /** Nobody takes a protective stop for a precaution. */
    private static List<ResetCause> causes(List<CellStop> open) {
        boolean arm = open.stream().anyMatch(CellStop::armStoppedItself);
        return java.util.Arrays.stream(ResetCause.values())
                .filter(cause -> !arm || cause != ResetCause.PRECAUTION)
                .toList();
    }

    /** On a shared screen the staff on duty; on an own device its owner. */
    private List<BenchView.Named> resetters(SignedInPerson me, Instant now) {
        return me.is(Role.BENCH)
                ? duty.onDuty(now).stream().map(BenchStages::named).toList()
                : List.of(new BenchView.Named(me.id().toString(), me.printedName()));
    }

    private BenchDraft closeOut(BenchDraft draft, Booking booking, SignedInPerson me) {
        int taps = (int) runs.events(booking.id()).stream()
                .filter(event -> event.kind() == RunEvent.Kind.CLOSE_OUT)
                .count();
        CloseOutItem item = CloseOutItem.after(taps).orElseThrow();
        return draft.stage(Stage.CLOSE_OUT)
                .head(
                        "Close-out " + item.number() + " of " + CloseOutItem.values().length + ", " + slot(booking),
                        item.challenge(),
                        "")
                .closeOut(item.choices(stoppedItself(booking.id())).stream()
                        .map(choice -> new BenchView.Tap(choice.value(), choice.words()))
                        .toList())
                .list(closeOutLines(taps))
                .mayAct(acts(booking, me));
    }

    private static List<BenchView.Line> closeOutLines(int taps) {
        return java.util.Arrays.stream(CloseOutItem.values())
                .map(item -> new BenchView.Line(
                        item.number(),
                        item.challenge(),
                        item.ordinal() < taps ? "done" : item.ordinal() == taps ? "now" : "later"))
                .toList();
    }

    private BenchView.Running view(Run run, @Nullable Release release, BenchView.@Nullable Watch watch) {
        Instant since = lastStart(run);
        return new BenchView.Running(
                run.id().toString(),
                labTime.lately(since),
                run.passes(),
                release == null ? null : release.passLimit(),
                labTime.iso(since),
                run.state() == RunState.STOPPED ? whys(run.booking()) : List.of(),
                watch);
    }

    /** Nobody takes a protective stop for a precaution. */
    private List<BenchView.Tap> whys(BookingId booking) {
        boolean arm = stoppedItself(booking);
        return java.util.Arrays.stream(ResetCause.values())
                .filter(cause -> !arm || cause != ResetCause.PRECAUTION)
                .map(cause -> new BenchView.Tap(cause.code(), cause.words()))
                .toList();
    }

    private boolean stoppedItself(BookingId booking) {
        return runs.events(booking).stream().anyMatch(event -> event.kind() == RunEvent.Kind.PROTECTIVE_STOP);
    }

    private Instant lastStart(Run run) {
        List<RunEvent> starts = runs.events(run.booking()).stream()
                .filter(event -> event.kind() == RunEvent.Kind.STARTED)
                .toList();
        return starts.isEmpty()
                ? run.startedAt()
                : starts.get(starts.size() - 1).at();
    }

    String slot(Booking booking) {
        return people.printedName(booking.operator()) + ", " + labTime.span(booking.start(), booking.end());
    }

    static boolean acts(Booking booking, SignedInPerson me) {
        return booking.involves(me.id()) || me.isLabStaff() || me.is(Role.BENCH);
    }

    static BenchView.Named named(Person person) {
        return new BenchView.Named(person.id().toString(), person.printedName());
    }

    static Optional<PersonId> id(String raw) {
        try {
            return Optional.of(PersonId.of(raw));
        } catch (IllegalArgumentException notAnId) {
            return Optional.empty();
        }
    }
}
