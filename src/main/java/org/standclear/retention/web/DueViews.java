package org.standclear.retention.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.retention.Stretch.Position;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.DisposalWaits;
import org.standclear.retention.DisposalWaits.Wait;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Overview;
import org.standclear.retention.Disposals.Preview;
import org.standclear.retention.DueRecords.Counted;
import org.standclear.retention.DueRecords.Page;
import org.standclear.retention.KeepingRule;

/** Puts what is due into words, counted and one by one. */
@Component
class DueViews {

    private final DisposalWaits waits;
    private final DisposalViews lists;
    private final LabTime labTime;
    private final Clock clock;

    DueViews(DisposalWaits waits, DisposalViews lists, LabTime labTime, Clock clock) {
        this.waits = waits;
        this.lists = lists;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** A kind with what is due of it; {@code href} is the page that names each. */
    record Line(
            String words, String records, String span, String rule, String atTheEnd, String keptBack, String href) {}

    /**
     * What is due, counted.
     *
     * @param listHref page of this month's list; empty while none is approved
     */
    record DueView(
            String headline,
            String month,
            String waits,
            List<Line> due,
            List<Line> keptBack,
            String listHref,
            boolean mayApprove) {}

    /** A list before it is approved, as exactly as it will be; {@code from} is when it would be carried out. */
    record ApprovingView(String month, String from, List<Line> due) {}

    /** A record by name; {@code why} is empty when nothing keeps it. */
    record RecordView(String said, String clockStart, String why) {}

    /** Some records of a kind; {@code next} is where the following ones are, null when there are none. */
    record PageView(
            String headline,
            List<RecordView> lines,
            @Nullable String next) {}

    DueView due(Overview overview, SignedInPerson me) {
        List<Counted> kinds = overview.kinds();
        MonthList approved = overview.approved();
        int records = overview.records();
        String many = overview.isMore() ? "At least " + records + " records are" : counted(records);
        return new DueView(
                records == 0 && !overview.isMore() ? "Nothing is due for disposal" : many + " due for disposal",
                DisposalViews.inWords(overview.month()),
                days(overview.waits()),
                kinds.stream()
                        .filter(one -> one.due() > 0 || one.more())
                        .map(this::line)
                        .toList(),
                kinds.stream()
                        .filter(one -> !one.keptBack().isEmpty())
                        .map(this::line)
                        .toList(),
                approved == null ? "" : "/retention/lists/" + approved.id(),
                me.is(Role.ADMINISTRATOR) && approved == null && (records > 0 || overview.isMore()));
    }

    /** "12 records are due at once". */
    static String atOnce(Counted counted) {
        return (counted.more()
                        ? counted.due() + " records or more are"
                        : counted.due() == 0
                                ? "no record is"
                                : counted.due() == 1 ? "one record is" : counted.due() + " records are")
                + " due at once";
    }

    private static String counted(int records) {
        return records == 1 ? "One record is" : records + " records are";
    }

    /** "7 days; from Thu 3 Dec 2026 14:07 3 days". */
    String days(Wait wait) {
        String now = wait.days() == 1 ? "one day" : wait.days() + " days";
        return wait.shorterLater()
                .map(later -> now + "; from " + labTime.full(later.from()) + " " + later.days()
                        + (later.days() == 1 ? " day" : " days"))
                .orElse(now);
    }

    private Line line(Counted counted) {
        Instant first = counted.earliest();
        Instant last = counted.latest();
        return line(
                counted.rule(),
                counted.due() + (counted.more() ? " or more" : ""),
                first == null || last == null ? "" : lists.span(first, last),
                keptBack(counted.keptBack()));
    }

    private Line line(KeepingRule rule, String records, String span, String keptBack) {
        return new Line(
                rule.kind().words(),
                records,
                span,
                rule.words() + ", from when " + rule.kind().clockStart(),
                rule.kind().atTheEnd(),
                keptBack,
                "/retention/kinds/" + rule.kind().name());
    }

    ApprovingView approving(Preview preview) {
        return new ApprovingView(
                DisposalViews.inWords(preview.month()),
                labTime.full(clock.instant()
                        .atZone(labTime.zone())
                        .plusDays(waits.inForce().days())
                        .toInstant()),
                preview.due().stream()
                        .filter(one -> !one.records().isEmpty())
                        .map(one ->
                                line(one.rule(), String.valueOf(one.records().size()), "", ""))
                        .toList());
    }

    PageView page(RecordKind kind, Page page, boolean later) {
        long due = page.lines().stream().filter(one -> one.why().isEmpty()).count();
        Position next = page.next();
        String all = page.lines().isEmpty() && next == null && !later
                ? "no time is over"
                : (later || next != null ? "on this page " : "") + due + " due, "
                        + (page.lines().size() - due) + " kept back";
        return new PageView(
                kind.words() + ": " + all,
                page.lines().stream()
                        .map(one -> new RecordView(one.said(), labTime.full(one.clockStart()), one.why()))
                        .toList(),
                next == null
                        ? null
                        : UriComponentsBuilder.fromPath("/retention/kinds/" + kind.name())
                                .queryParam("after", "{after}")
                                .encode()
                                .buildAndExpand(Positions.write(next))
                                .toUriString());
    }

    private static String keptBack(Map<String, Integer> reasons) {
        return reasons.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> entry.getValue() + ": " + entry.getKey())
                .collect(Collectors.joining("; "));
    }
}
