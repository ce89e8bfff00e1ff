package org.standclear.signoff.records;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellHistory;
import org.standclear.check.StoredAnswer;
import org.standclear.people.DutyRoster;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.rules.ReleaserRules;

/** Asks who may release and issues the release, bound to one exact thing. */
@Component
class Releasing {

    private final Bookings bookings;
    private final DutyRoster duty;
    private final GateFacts gates;
    private final OneStop oneStop;
    private final Lists lists;
    private final CellHistory history;
    private final ReleaseRows releases;
    private final WaiverRows waivers;
    private final ReleaseCodes codes;
    private final BenchNumbers numbers;
    private final SignoffTrail trail;
    private final Programs programs;

    Releasing(
            Bookings bookings,
            DutyRoster duty,
            GateFacts gates,
            OneStop oneStop,
            Lists lists,
            CellHistory history,
            ReleaseRows releases,
            WaiverRows waivers,
            ReleaseCodes codes,
            BenchNumbers numbers,
            SignoffTrail trail,
            Programs programs) {
        this.bookings = bookings;
        this.duty = duty;
        this.gates = gates;
        this.oneStop = oneStop;
        this.lists = lists;
        this.history = history;
        this.releases = releases;
        this.waivers = waivers;
        this.codes = codes;
        this.numbers = numbers;
        this.trail = trail;
        this.programs = programs;
    }

    /** What keeps the person from releasing the booking; empty when nothing does. */
    List<Obstacle> refusals(PersonId person, Booking booking, PersonId author, Instant now) {
        Person releaser = gates.person(person);
        return ReleaserRules.ask(new ReleaserRules.Question(
                releaser,
                booking,
                author,
                duty.onDuty(person, now),
                releases.hasAttended(booking.id(), person),
                oneStop.elsewhere(person, booking, now),
                duty.onDuty(now)));
    }

    List<PersonId> mayRelease(Booking booking, PersonId author, Instant now) {
        return duty.onDuty(now).stream()
                .map(Person::id)
                .filter(person -> refusals(person, booking, author, now).isEmpty())
                .toList();
    }

    /** Issues the release; booking and cell are locked, every gate was asked. */
    Release issue(Sheet sheet, Booking booking, Cell cell, PersonId releaser, Instant now) {
        Revision revision = lists.revision(sheet);
        StoredAnswer answer = lists.answer(sheet);
        Instant soon = startBy(booking, answer, now);
        Release release = new Release(
                ReleaseId.next(),
                booking.id(),
                sheet.id(),
                cell.id(),
                sheet.cellVersion(),
                revision.id(),
                revision.sha256(),
                revision.declarationSha256(),
                Objects.requireNonNullElse(answer.bench().tool(), ""),
                answer.bench().payloadKg(),
                sheet.operator(),
                sheet.attendant(),
                releaser,
                codes.next(),
                isFirstRun(revision, cell, sheet.cellVersion()),
                passLimit(answer.bench().loop()),
                now,
                soon.isBefore(booking.end()) ? soon : booking.end(),
                booking.end(),
                null,
                null,
                null);
        releases.freeRunOut(now);
        oneStop.free(sheet.attendant(), booking, now);
        releases.add(
                release,
                programs.revisions(revision.program()).stream()
                        .mapToInt(Revision::number)
                        .max()
                        .orElseThrow());
        trail.released(release);
        Upkeep.moved(bookings.markReleased(booking.id(), releaser));
        return release;
    }

    /** A release does not outlast the waiver that it rests on. */
    private Instant startBy(Booking booking, StoredAnswer answer, Instant now) {
        Instant soon = now.plus(numbers.inForce().releaseHolds());
        return waivers.standing(booking.id(), answer.id(), now)
                .map(Waiver::expiresAt)
                .filter(expires -> expires.isBefore(soon))
                .orElse(soon);
    }

    /** The first of this program version on this cell version, or of anybody after a return to service. */
    private boolean isFirstRun(Revision revision, Cell cell, int cellVersion) {
        long returned = history.lastReturned(cell.id());
        return !releases.hasRun(revision.id(), cell.id(), cellVersion)
                || returned > 0 && !releases.hasRunSince(cell.id(), returned);
    }

    private static @Nullable Integer passLimit(@Nullable String loop) {
        if (loop == null) {
            return 1;
        }
        return loop.equals("forever") ? null : Integer.valueOf(loop);
    }
}
