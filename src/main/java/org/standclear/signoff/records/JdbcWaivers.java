package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cells;
import org.standclear.check.StoredAnswer;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.cell.CellLimits;
import org.standclear.core.cell.ContactLimit;
import org.standclear.core.cell.Obligation;
import org.standclear.core.cell.SeparationLimit;
import org.standclear.core.limits.Check;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.Revision;
import org.standclear.signoff.Preparation.Prepared;
import org.standclear.signoff.Release;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers;
import org.standclear.signoff.rules.AnswerLine;
import org.standclear.signoff.rules.Lapses;
import org.standclear.signoff.rules.WaiverRules;

/** Gives waivers and takes them back under the locks of booking and cell; the booking goes on as if its program were within limits. */
@Service
class JdbcWaivers implements Waivers {

    private final Bookings bookings;
    private final Cells cells;
    private final Upkeep upkeep;
    private final PreparedView view;
    private final GateFacts gates;
    private final WaiverRows rows;
    private final ReleaseRows releases;
    private final SignoffTrail trail;
    private final Clock clock;

    JdbcWaivers(
            Bookings bookings,
            Cells cells,
            Upkeep upkeep,
            PreparedView view,
            GateFacts gates,
            WaiverRows rows,
            ReleaseRows releases,
            SignoffTrail trail,
            Clock clock) {
        this.bookings = bookings;
        this.cells = cells;
        this.upkeep = upkeep;
        this.view = view;
        this.gates = gates;
        this.rows = rows;
        this.releases = releases;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Question question(BookingId id) {
        return ask(id, now());
    }

    private Question ask(BookingId id, Instant now) {
        if (bookings.find(id).isEmpty()) {
            throw new NotFoundException("booking");
        }
        Upkeep.Current current = upkeep.lock(id, now);
        Prepared prepared = view.of(current.booking(), current.cell());
        StoredAnswer answer = prepared.answer();
        List<Blocking> blocking = answer == null || answer.verdict() == StoredAnswer.Verdict.WITHIN
                ? List.of()
                : AnswerLine.blocking(answer, advised(answer));
        boolean standing = prepared.waiver().isPresent();
        return new Question(
                prepared, blocking, WaiverRules.againstAny(prepared.booking(), answer, blocking, standing, now));
    }

    /** What the cell's version only advises: it is shown when it cannot be checked, and stands in nobody's way. */
    private Set<String> advised(StoredAnswer answer) {
        CellLimits limits = cells.version(answer.cell(), answer.cellVersion())
                .map(version -> CellFileReader.read(version.file()).value().limits())
                .orElseThrow();
        Set<String> advised = new HashSet<>();
        if (limits.movingPartRule() == Obligation.ADVISED) {
            advised.add(Check.MOVING_PART_SPEED.word());
        }
        ContactLimit contact = limits.contact();
        if (contact != null && contact.rule() == Obligation.ADVISED) {
            advised.add(Check.CONTACT.word());
        }
        SeparationLimit separation = limits.separation();
        if (separation != null && separation.rule() == Obligation.ADVISED) {
            advised.add(Check.SEPARATION.word());
        }
        return advised;
    }

    @Override
    @Transactional
    public Given give(GiveWaiver wanted) {
        Instant now = now();
        Question question = ask(wanted.booking(), now);
        if (!question.refusal().isEmpty()) {
            return new Given.Refused("", question.refusal());
        }
        StoredAnswer answer = Objects.requireNonNull(question.prepared().answer());
        Revision revision = Objects.requireNonNull(question.prepared().revision());
        if (!answer.id().equals(wanted.answer())) {
            return new Given.Refused(
                    "", "The check answered anew since the page was opened. Read the new answer first.");
        }
        List<String> checks =
                question.blocking().stream().map(Blocking::check).distinct().toList();
        Optional<Given.Refused> refused = WaiverRules.againstGiver(
                        gates.person(wanted.by()), question.prepared().booking(), revision.author())
                .or(() -> WaiverRules.againstTerms(
                        wanted.reason(), wanted.expires(), question.prepared().booking(), now))
                .or(() -> WaiverRules.againstUnreadLines(checks, wanted.linesRead()));
        if (refused.isPresent()) {
            return refused.get();
        }
        Waiver waiver = new Waiver(
                Id.newValue(),
                wanted.booking(),
                answer.id(),
                checks,
                wanted.reason().strip(),
                Waiver.setsUnreadLinesAside(checks) ? wanted.linesRead() : null,
                wanted.by(),
                now,
                SqlTime.stored(Objects.requireNonNull(wanted.expires())),
                null,
                null);
        rows.add(waiver);
        trail.waived(waiver);
        upkeep.lock(wanted.booking(), now);
        return new Given.Kept(waiver);
    }

    @Override
    @Transactional
    public Given takeBack(TakeBack wanted) {
        Instant now = now();
        if (bookings.find(wanted.booking()).isEmpty()) {
            throw new NotFoundException("booking");
        }
        Booking booking = upkeep.lock(wanted.booking(), now).booking();
        Waiver waiver = rows.of(booking.id()).stream()
                .filter(one -> one.id().equals(wanted.waiver()))
                .findFirst()
                .orElse(null);
        Optional<Given.Refused> refused =
                WaiverRules.againstTakingBack(gates.person(wanted.by()), waiver, wanted.reason(), now);
        if (waiver == null || refused.isPresent()) {
            return refused.orElseThrow();
        }
        Waiver.TakenBack taken =
                new Waiver.TakenBack(wanted.by(), now, wanted.reason().strip());
        rows.takeBack(waiver.id(), taken);
        trail.waiverTakenBack(waiver, taken);
        if (booking.state() == BookingState.RELEASED) {
            Release release = releases.latest(booking.id()).orElseThrow();
            upkeep.lapsed(booking, release, Lapses.waiverTakenBack(taken.reason()), wanted.by(), now);
        }
        upkeep.lock(booking.id(), now);
        return new Given.Kept(rows.of(booking.id()).stream()
                .filter(one -> one.id().equals(waiver.id()))
                .findFirst()
                .orElseThrow());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Waiver> standing(BookingId id) {
        return bookings.find(id).flatMap(gates::answer).flatMap(answer -> rows.standing(id, answer.id(), now()));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Waiver> of(BookingId booking) {
        return rows.of(booking);
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
