package org.standclear.retention.web;

import java.time.Instant;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.people.People;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.Disposals;
import org.standclear.retention.Disposals.LogLine;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Preview;
import org.standclear.retention.DueRecords.Due;
import org.standclear.retention.DueRecords.DueRecord;

/** Puts what is due, lists and the log into words. */
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
    private final People people;
    private final LabTime labTime;

    DisposalViews(Disposals disposals, People people, LabTime labTime) {
        this.disposals = disposals;
        this.people = people;
        this.labTime = labTime;
    }

    /** "November 2026". */
    private static String inWords(String month) {
        return MONTH.format(YearMonth.parse(month));
    }

    /** A kind with what is due of it. */
    record Line(String words, int records, String span, String rule, String atTheEnd, String keptBack) {}

    /**
     * The preview.
     *
     * @param listHref page of this month's list; empty while none is approved
     */
    record DueView(
            String headline,
            String month,
            int records,
            List<Line> due,
            List<Line> keptBack,
            String fingerprint,
            String listHref,
            boolean mayApprove) {}

    /** A list in words; {@code percent} of its records are settled. */
    record ListView(
            String id,
            String headline,
            String month,
            String approved,
            String finished,
            String progress,
            boolean open,
            List<KindView> kinds) {}

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

    DueView due(Preview preview, SignedInPerson me) {
        List<Line> all = preview.due().stream().map(this::line).toList();
        MonthList approved = preview.approved();
        String records = preview.records() == 1 ? "One record is due" : preview.records() + " records are due";
        return new DueView(
                preview.records() == 0 ? "Nothing is due for disposal" : records + " for disposal",
                inWords(preview.month()),
                preview.records(),
                all.stream().filter(one -> one.records() > 0).toList(),
                all.stream().filter(one -> !one.keptBack().isEmpty()).toList(),
                preview.fingerprint(),
                approved == null ? "" : "/retention/lists/" + approved.id(),
                me.is(Role.ADMINISTRATOR) && approved == null && preview.records() > 0);
    }

    private Line line(Due due) {
        List<DueRecord> records = due.records();
        return new Line(
                due.kind().words(),
                records.size(),
                records.isEmpty()
                        ? ""
                        : span(
                                records.get(0).clockStart(),
                                records.get(records.size() - 1).clockStart()),
                due.rule().words() + ", from when " + due.kind().clockStart(),
                due.kind().atTheEnd(),
                keptBack(due.keptBack()));
    }

    private static String keptBack(Map<String, Integer> reasons) {
        return reasons.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> entry.getValue() + ": " + entry.getKey())
                .collect(Collectors.joining("; "));
    }

    private String span(Instant first, Instant last) {
        String from = labTime.date(first).toString();
        String until = labTime.date(last).toString();
        return from.equals(until) ? from : from + " to " + until;
    }

    List<ListView> lists() {
        return disposals.lists(SHOWN).stream().map(this::list).toList();
    }

    ListView list(MonthList list) {
        Instant finished = list.finishedAt();
        return new ListView(
                list.id().toString(),
                finished == null
                        ? "The list of " + inWords(list.month()) + " is being carried out: " + list.settled() + " of "
                                + list.records()
                        : "The list of " + inWords(list.month()) + " is carried out",
                inWords(list.month()),
                people.printedName(list.approvedBy()) + ", " + labTime.full(list.approvedAt()),
                finished == null ? "" : labTime.full(finished),
                list.settled() + " of " + list.records(),
                finished == null,
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
