package org.standclear.retention.web;

import java.time.Clock;
import java.time.Instant;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.People;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.Disposals;
import org.standclear.retention.Disposals.LogLine;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Standing;
import org.standclear.retention.Disposals.Stopped;

/** Puts lists and the log into words. */
@Component
class DisposalViews {

    static final List<String> COLUMNS = List.of(
            "month",
            "records",
            "rule",
            "disposed of",
            "kept back",
            "gone already",
            "failed",
            "clocks started from",
            "clocks started until",
            "approved by",
            "approved at",
            "finished at");

    private static final int SHOWN = 24;
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.ENGLISH);

    private final Disposals disposals;
    private final Clock clock;
    private final People people;
    private final LabTime labTime;

    DisposalViews(Disposals disposals, People people, LabTime labTime, Clock clock) {
        this.disposals = disposals;
        this.clock = clock;
        this.people = people;
        this.labTime = labTime;
    }

    /** "November 2026". */
    static String inWords(String month) {
        return MONTH.format(YearMonth.parse(month));
    }

    /**
     * A list in words.
     *
     * @param open whether it is being carried out
     * @param mark its state, as pages draw it
     */
    record ListView(
            String id,
            String headline,
            String month,
            String approved,
            String from,
            String stopped,
            String finished,
            String progress,
            boolean open,
            String mark,
            List<KindView> kinds) {}

    /** A record on a list by name. */
    record StandingView(String words, String said, String clockStart, String why) {}

    /** Some of what stands on a list. */
    record StandingPage(List<StandingView> lines, @Nullable String next) {}

    /** How a kind on a list stands. */
    record KindView(String words, int pending, int disposed, int keptBack, int gone, int failed, String because) {}

    /** A line of the log. */
    record LogView(
            String month,
            String words,
            String rule,
            int disposed,
            String others,
            String span,
            String approved,
            String finished) {}

    StandingPage standing(MonthList list, List<Standing> found, int size) {
        List<Standing> shown = found.subList(0, Math.min(size, found.size()));
        return new StandingPage(
                shown.stream()
                        .map(one -> new StandingView(
                                one.kind().words(), one.said(), labTime.full(one.clockStart()), one.why()))
                        .toList(),
                found.size() > size
                        ? "/retention/lists/" + list.id() + "?after="
                                + shown.get(size - 1).number()
                        : null);
    }

    /** Whoever may place a hold may stop a list, too: nothing is lost by either. */
    boolean mayStop(SignedInPerson me) {
        return me.is(Role.ADMINISTRATOR) || me.is(Role.INSTRUCTOR);
    }

    String span(Instant first, Instant last) {
        String from = labTime.date(first).toString();
        String until = labTime.date(last).toString();
        return from.equals(until) ? from : from + " to " + until;
    }

    List<ListView> lists() {
        return disposals.lists(SHOWN).stream().map(this::list).toList();
    }

    ListView list(MonthList list) {
        Instant finished = list.finishedAt();
        Stopped stopped = list.stopped();
        boolean waits = finished == null && clock.instant().isBefore(list.carriedOutFrom());
        return new ListView(
                list.id().toString(),
                "The list of " + inWords(list.month()) + " " + how(list, waits),
                inWords(list.month()),
                people.printedName(list.approvedBy()) + ", " + labTime.full(list.approvedAt()),
                labTime.full(list.carriedOutFrom()),
                stopped == null
                        ? ""
                        : people.printedName(stopped.by()) + ", " + labTime.full(stopped.at()) + ": "
                                + stopped.reason(),
                finished == null ? "" : labTime.full(finished),
                list.settled() + " of " + list.records(),
                finished == null && !waits,
                stopped != null ? "cancelled" : finished == null ? "waiting" : "done",
                list.kinds().stream()
                        .map(kind -> new KindView(
                                kind.kind().words(),
                                kind.pending(),
                                kind.disposed(),
                                kind.keptBack(),
                                kind.gone(),
                                kind.failed(),
                                String.join("; ", kind.because())))
                        .toList());
    }

    private String how(MonthList list, boolean waits) {
        if (list.stopped() != null) {
            return "was stopped";
        }
        if (waits) {
            return "is carried out from " + labTime.full(list.carriedOutFrom());
        }
        return list.finishedAt() == null
                ? "is being carried out: " + list.settled() + " of " + list.records()
                : "is carried out";
    }

    List<LogView> log(List<LogLine> lines) {
        return lines.stream()
                .map(line -> new LogView(
                        inWords(line.month()),
                        line.kind().words(),
                        line.rule(),
                        line.disposed(),
                        line.keptBack() + " kept back, " + line.gone() + " gone already, " + line.failed() + " failed",
                        span(line.earliestStart(), line.latestStart()),
                        people.printedName(line.approvedBy()) + ", " + labTime.full(line.approvedAt()),
                        labTime.full(line.finishedAt())))
                .toList();
    }

    List<Object> columns(LogLine line) {
        return List.of(
                line.month(),
                line.kind().words(),
                line.rule(),
                line.disposed(),
                line.keptBack(),
                line.gone(),
                line.failed(),
                labTime.iso(line.earliestStart()),
                labTime.iso(line.latestStart()),
                TableCell.plain(people.printedName(line.approvedBy())),
                labTime.iso(line.approvedAt()),
                labTime.iso(line.finishedAt()));
    }
}
