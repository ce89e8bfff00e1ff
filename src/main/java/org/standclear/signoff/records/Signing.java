package org.standclear.signoff.records;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.people.People;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Disagreement;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Signature;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.signoff.SignoffDesk.Statement;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.rules.Comparison;
import org.standclear.signoff.rules.Comparison.Difference;
import org.standclear.signoff.rules.Gates;
import org.standclear.signoff.rules.Items;
import org.standclear.signoff.rules.StatementText;

/** Takes signatures: asks who signs, compares all answers once more, and releases with the last one. */
@Component
class Signing {

    private final Bookings bookings;
    private final People people;
    private final SigningPins pins;
    private final Upkeep upkeep;
    private final GateFacts gates;
    private final Lists lists;
    private final Releasing releasing;
    private final TakingOver takingOver;
    private final DraftRows drafts;
    private final SheetRows sheets;
    private final SignatureRows signatures;
    private final EventRows events;
    private final SignoffTrail trail;
    private final LabTime labTime;

    Signing(
            Bookings bookings,
            People people,
            SigningPins pins,
            Upkeep upkeep,
            GateFacts gates,
            Lists lists,
            Releasing releasing,
            TakingOver takingOver,
            DraftRows drafts,
            SheetRows sheets,
            SignatureRows signatures,
            EventRows events,
            SignoffTrail trail,
            LabTime labTime) {
        this.bookings = bookings;
        this.people = people;
        this.pins = pins;
        this.upkeep = upkeep;
        this.gates = gates;
        this.lists = lists;
        this.releasing = releasing;
        this.takingOver = takingOver;
        this.drafts = drafts;
        this.sheets = sheets;
        this.signatures = signatures;
        this.events = events;
        this.trail = trail;
        this.labTime = labTime;
    }

    /** Refuses a signature in another's name: a shared screen needs the PIN, an own device signs for its owner only. */
    Optional<Signed> whoSigns(SignPart wanted, boolean sharedScreen) {
        if (!sharedScreen) {
            return wanted.account().equals(wanted.signer())
                    ? Optional.empty()
                    : refused("signer", new Obstacle("not-the-signer", "Each person signs as themselves.", ""));
        }
        String says = pinFault(wanted.signer(), Objects.requireNonNullElse(wanted.pin(), ""));
        return says.isEmpty() ? Optional.empty() : refused("pin", new Obstacle("pin", says, ""));
    }

    private static Optional<Signed> refused(String field, Obstacle obstacle) {
        return Optional.of(new Signed.Refused(field, List.of(obstacle)));
    }

    private String pinFault(PersonId signer, String pin) {
        SigningPins.Outcome outcome = pins.check(signer, pin.strip());
        if (outcome instanceof SigningPins.Outcome.Wrong wrong) {
            return "That is not the signing PIN of " + people.printedName(signer) + "; " + wrong.triesLeft()
                    + (wrong.triesLeft() == 1 ? " try left." : " tries left.");
        }
        if (outcome instanceof SigningPins.Outcome.Paused paused) {
            return "Too many wrong tries; the PIN of " + people.printedName(signer) + " is taken again at "
                    + labTime.time(paused.until()) + ".";
        }
        return outcome instanceof SigningPins.Outcome.NotSet
                ? people.printedName(signer) + " has no signing PIN yet: sign in on an own device and choose one."
                : "";
    }

    Optional<Obstacle> sameAs(PersonId wanted, PersonId signer) {
        return wanted.equals(signer)
                ? Optional.empty()
                : Optional.of(new Obstacle(
                        "not-your-part", "This part is " + people.printedName(wanted) + "'s to sign.", ""));
    }

    /** Booking and cell are locked and up to date, and the part may be signed. */
    Signed sign(Sheet sheet, SignPart wanted, Instant now) {
        Booking booking = bookings.find(sheet.booking()).orElseThrow();
        List<Obstacle> obstacles = refusals(sheet, booking, wanted, now);
        if (!obstacles.isEmpty()) {
            return new Signed.Refused("signer", obstacles);
        }
        Answers answers = drafts.of(sheet.id(), wanted.part(), wanted.account());
        List<ListItem> items = Items.of(sheet.list(), wanted.part(), sheet.brief());
        Statement statement = lists.statement(sheet, wanted.part(), answers);
        if (!items.stream().allMatch(item -> answers.has(item.number()))
                || !statement.sha256().equals(wanted.statementSha256())) {
            return new Signed.MovedOn(JdbcSignoffDesk.MOVED_ON);
        }
        Optional<Difference> difference = items.stream()
                .flatMap(item -> Comparison.withKnown(
                        sheet.list(),
                        wanted.part(),
                        item.number(),
                        answers.of(item.number()),
                        lists.expected(sheet, now))
                        .stream())
                .findFirst();
        if (difference.isPresent()) {
            return readAgain(sheet, wanted, difference.get(), now);
        }
        if (sheet.list() == SignoffList.HANDOVER) {
            return takeOver(sheet, booking, wanted, statement, answers, now);
        }
        if (wanted.part() == Part.RELEASER) {
            return release(sheet, booking, wanted, statement, answers, now);
        }
        return new Signed.Kept(store(sheet, wanted, statement, answers, true, now, booking));
    }

    private Signed takeOver(
            Sheet sheet, Booking booking, SignPart wanted, Statement statement, Answers answers, Instant now) {
        List<Obstacle> refused = takingOver.take(sheet, booking, now);
        return refused.isEmpty()
                ? new Signed.Kept(store(sheet, wanted, statement, answers, true, now, booking))
                : new Signed.Refused("signer", refused);
    }

    /** What the record says changed between the answer and the signature. */
    private Signed readAgain(Sheet sheet, SignPart wanted, Difference difference, Instant now) {
        keep(sheet, wanted.part(), difference, now);
        trail.disagreed(sheet, wanted.part(), difference.item(), wanted.signer());
        drafts.remove(sheet.id(), wanted.part(), wanted.account(), difference.item());
        return new Signed.MovedOn(difference.says());
    }

    private List<Obstacle> refusals(Sheet sheet, Booking booking, SignPart wanted, Instant now) {
        return switch (wanted.part()) {
            case OPERATOR -> ownPart(sheet, booking, sheet.operator(), wanted, now);
            case ATTENDANT -> ownPart(sheet, booking, sheet.attendant(), wanted, now);
            case RELEASER ->
                releasing.refusals(
                        wanted.signer(), booking, lists.revision(sheet).author(), now);
        };
    }

    private List<Obstacle> ownPart(Sheet sheet, Booking booking, PersonId owner, SignPart wanted, Instant now) {
        Optional<Obstacle> another = sameAs(owner, wanted.signer());
        if (another.isPresent()) {
            return List.of(another.get());
        }
        if (wanted.part() == Part.ATTENDANT && sheet.list() != SignoffList.SESSION) {
            List<Obstacle> atTheStop = new ArrayList<>(takingOver.refusals(owner, booking, now));
            if (sheet.list() == SignoffList.HANDOVER) {
                takingOver.otherPart(owner, takingOver.release(sheet)).ifPresent(atTheStop::add);
            }
            if (!atTheStop.isEmpty()) {
                return atTheStop;
            }
        }
        String own = wanted.part() == Part.OPERATOR ? "operator-" : "attendant-";
        // during a run the booking still names the one who leaves; asked is about the one who comes
        Booking asked = sheet.list() == SignoffList.HANDOVER ? booking.withAttendant(owner) : booking;
        List<Obstacle> obstacles = gates
                .obstacles(asked, upkeep.lock(booking.id(), now).cell(), now)
                .stream()
                .filter(obstacle ->
                        obstacle.code().startsWith(own) || obstacle.code().equals(Gates.SLOT_OVER))
                .toList();
        if (obstacles.isEmpty() && sheet.list() == SignoffList.SESSION && wanted.part() == Part.OPERATOR) {
            return checkIn(booking);
        }
        return obstacles;
    }

    /** Who signs the session list as operator is at the cell. */
    private List<Obstacle> checkIn(Booking booking) {
        if (booking.checkedInAt() != null || booking.state() != BookingState.CHECKED) {
            return List.of();
        }
        Transition transition = bookings.checkIn(booking.id(), booking.operator());
        return transition instanceof Transition.Refused refused
                ? List.of(new Obstacle("check-in", refused.says(), ""))
                : List.of();
    }

    private Signed release(
            Sheet sheet, Booking booking, SignPart wanted, Statement statement, Answers answers, Instant now) {
        Upkeep.Current current = upkeep.lock(booking.id(), now);
        List<Obstacle> obstacles = gates.obstacles(current.booking(), current.cell(), now);
        if (!obstacles.isEmpty()) {
            return new Signed.Refused("release", obstacles);
        }
        Answers read = sheet.signedBy(Part.OPERATOR).orElseThrow().answers();
        List<Difference> differences = Comparison.withEachOther(read, answers);
        store(sheet, wanted, statement, answers, differences.isEmpty(), now, booking);
        if (!differences.isEmpty()) {
            return notReleased(sheet, wanted, differences, now);
        }
        sheets.close(sheet.id(), Sheet.Outcome.DONE, "", now);
        return new Signed.Released(releasing.issue(sheet, current.booking(), current.cell(), wanted.signer(), now));
    }

    private Signed notReleased(Sheet sheet, SignPart wanted, List<Difference> differences, Instant now) {
        differences.forEach(difference -> keep(sheet, wanted.part(), difference, now));
        String says = differences.stream().map(Difference::says).collect(Collectors.joining(" "));
        sheets.close(sheet.id(), Sheet.Outcome.REFUSED, says, now);
        trail.notReleased(sheet, wanted.signer(), says);
        return new Signed.NotReleased(says);
    }

    Disagreement keep(Sheet sheet, Part part, Difference difference, Instant now) {
        Disagreement disagreement = new Disagreement(
                sheet.booking(),
                sheet.list(),
                part,
                difference.item(),
                difference.expected(),
                difference.read(),
                difference.says(),
                now);
        events.addDisagreement(sheet.id(), disagreement);
        return disagreement;
    }

    private Signature store(
            Sheet sheet,
            SignPart wanted,
            Statement statement,
            Answers answers,
            boolean agreed,
            Instant now,
            Booking booking) {
        Signature signature = new Signature(
                Id.newValue(),
                sheet.id(),
                wanted.part(),
                wanted.signer(),
                people.printedName(wanted.signer()),
                now,
                StatementText.meaning(sheet.list(), wanted.part()),
                statement.text(),
                statement.sha256(),
                wanted.account().equals(wanted.signer()) ? Signature.Method.OWN_SIGN_IN : Signature.Method.SIGNING_PIN,
                agreed,
                answers);
        signatures.add(signature);
        trail.signed(sheet, signature);
        if (wanted.part() != Part.RELEASER) {
            upkeep.lock(booking.id(), now);
        }
        return signature;
    }
}
