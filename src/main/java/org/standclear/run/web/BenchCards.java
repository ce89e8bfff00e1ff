package org.standclear.run.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.cell.Cell;
import org.standclear.check.BenchFacts;
import org.standclear.check.CheckWords;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Revision;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseWords;
import org.standclear.signoff.Part;
import org.standclear.signoff.Preparation.Prepared;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Signature;
import org.standclear.signoff.SignoffDesk.Standing;
import org.standclear.signoff.SignoffList;

/** Who, what and how far: the side of a bench screen. Nothing here comes from an answer that another has to give blind. */
@Component
class BenchCards {

    private final People people;
    private final Labs labs;
    private final LapseWords lapseWords;
    private final LabTime labTime;

    BenchCards(People people, Labs labs, LapseWords lapseWords, LabTime labTime) {
        this.people = people;
        this.labs = labs;
        this.lapseWords = lapseWords;
        this.labTime = labTime;
    }

    BenchView.BookingCard of(Standing standing, Cell cell) {
        Prepared prepared = standing.prepared();
        Booking booking = prepared.booking();
        Revision revision = prepared.revision();
        StoredAnswer answer = prepared.answer();
        BenchFacts facts = answer == null ? null : answer.bench();
        return new BenchView.BookingCard(
                booking.id().toString(),
                labTime.span(booking.start(), booking.end()),
                people.printedName(booking.operator()),
                name(booking.attendant()),
                StateMarks.of(booking.state()),
                booking.state().words(),
                revision == null ? "none yet" : revision.title() + ", revision " + revision.number(),
                cell.name() + " version " + cell.currentVersion(),
                facts == null ? "" : Objects.requireNonNullElse(facts.tool(), ""),
                facts == null ? "" : besideLimit(facts.payloadKg(), 2, "kg", facts.payloadLimitKg()),
                facts == null ? "" : besideLimit(facts.heldPeakMmS(), 0, "mm/s", facts.toolSpeedLimitMmS()),
                fullPower(facts),
                cautions(facts, prepared),
                answer == null ? "" : "/checks/" + answer.id(),
                prepared.says());
    }

    /** What stays on the release card; a waiver stands first. */
    private List<String> cautions(@Nullable BenchFacts facts, Prepared prepared) {
        List<String> cautions = new ArrayList<>();
        prepared.waiver()
                .ifPresent(waiver -> cautions.add("Not within limits. Waived for one run by "
                        + people.printedName(waiver.givenBy()) + " until " + labTime.time(waiver.expiresAt()) + ": "
                        + CheckWords.checks(waiver.checks()) + ". " + waiver.reason() + waiver.confirmed()));
        if (facts != null) {
            cautions.addAll(facts.cautions());
        }
        prepared.notChecked().forEach(one -> cautions.add("Not checked. " + one));
        return cautions;
    }

    /** "125 mm/s of 250"; empty when there is no value, and without the limit when that is not known. */
    private static String besideLimit(@Nullable Double value, int digits, String unit, @Nullable Double limit) {
        if (value == null) {
            return "";
        }
        String shown = number(value, digits) + " " + unit;
        return limit == null ? shown : shown + " of " + plain(limit);
    }

    private static String plain(double limit) {
        return limit == 0 ? "0" : BigDecimal.valueOf(limit).stripTrailingZeros().toPlainString();
    }

    /** "In full power this program would reach 913 mm/s, at ..."; rounded up, towards the unsafe side. */
    static String fullPower(@Nullable BenchFacts facts) {
        return facts == null
                        || facts.fullPowerPeakMmS() == null
                        || !faster(facts.fullPowerPeakMmS(), facts.heldPeakMmS())
                ? ""
                : "In full power this program would reach " + number(facts.fullPowerPeakMmS(), 0) + " mm/s"
                        + CheckWords.atUntoldOverride(facts.overridePercent());
    }

    /** Whether the full speed is above the held one as people read them. */
    private static boolean faster(double full, @Nullable Double held) {
        return held == null || !number(full, 0).equals(number(held, 0));
    }

    static String number(double value, int digits) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(digits, RoundingMode.CEILING);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private String name(@Nullable PersonId person) {
        return person == null ? "nobody yet" : people.printedName(person);
    }

    /** What lapsed or was refused since the last step. */
    List<String> notices(Standing standing) {
        List<String> notices = new ArrayList<>();
        List<String> unknown = labs.theLab().unknown();
        if (!unknown.isEmpty()) {
            notices.add("Not set for this lab: " + String.join(", ", unknown)
                    + ". Nobody should run here before an administrator has set them.");
        }
        if (!standing.notReleased().isEmpty()) {
            notices.add("Not released. " + standing.notReleased());
        }
        Optional<Lapse> lapse = standing.prepared().lapsed().filter(one -> isNews(one, standing));
        lapse.map(lapseWords::of).ifPresent(notices::add);
        return notices;
    }

    private static boolean isNews(Lapse lapse, Standing standing) {
        BookingState state = standing.prepared().booking().state();
        boolean before = state == BookingState.BOOKED || state == BookingState.CHECKED || state == BookingState.READY;
        return (before || state == BookingState.STOPPED) && !lapse.what().equals("short list");
    }

    /** The list that is open, line by line: who has signed, and whose turn it is. */
    List<BenchView.Line> list(Standing standing) {
        return standing.sheet().map(this::lines).orElse(List.of());
    }

    private List<BenchView.Line> lines(Sheet sheet) {
        List<BenchView.Line> lines = new ArrayList<>();
        int number = 1;
        for (Part part : sheet.list().parts()) {
            lines.add(new BenchView.Line(number++, words(sheet, part), state(sheet, part)));
        }
        return lines;
    }

    private String words(Sheet sheet, Part part) {
        Optional<Signature> signature = sheet.signedBy(part);
        String items = items(sheet, part);
        return signature
                .map(one -> one.printedName() + ", " + part.words() + ": signed " + labTime.time(one.at()))
                .orElseGet(() -> who(sheet, part) + items);
    }

    private String who(Sheet sheet, Part part) {
        return switch (part) {
            case OPERATOR -> people.printedName(sheet.operator()) + ", operator";
            case ATTENDANT -> people.printedName(sheet.attendant()) + ", e-stop attendant";
            case RELEASER -> "Technician or instructor on duty";
        };
    }

    private static String items(Sheet sheet, Part part) {
        if (sheet.list() != SignoffList.BENCH) {
            return "";
        }
        return switch (part) {
            case OPERATOR -> sheet.brief() ? ": short list 1 and 2" : ": items 1 to 6";
            case ATTENDANT -> sheet.brief() ? ": short list 3" : ": item 7";
            case RELEASER -> sheet.brief() ? ": short list 2, 4 and 5" : ": items 2, 8 and 9";
        };
    }

    private static String state(Sheet sheet, Part part) {
        if (sheet.signedBy(part).isPresent()) {
            return "done";
        }
        return sheet.next().filter(part::equals).isPresent() ? "now" : "later";
    }
}
