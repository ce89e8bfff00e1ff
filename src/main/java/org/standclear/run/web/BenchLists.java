package org.standclear.run.web;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.run.web.BenchView.Stage;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffDesk.Standing;
import org.standclear.signoff.SignoffDesk.Step;
import org.standclear.signoff.SignoffList;

/** The acts before a release: what is missing, the next item, the next signature, or whom it waits for. */
@Component
class BenchLists {

    /** Numbers of the items on the short list. */
    private static final List<Integer> BRIEF = List.of(1, 2, 7, 8, 9);

    private final SignoffDesk desk;
    private final People people;
    private final LabTime labTime;

    BenchLists(SignoffDesk desk, People people, LabTime labTime) {
        this.desk = desk;
        this.people = people;
        this.labTime = labTime;
    }

    BenchDraft choose(BenchDraft draft, Standing standing, SignedInPerson me, Instant now) {
        Booking booking = standing.prepared().booking();
        if (standing.sheet().isPresent()) {
            return onSheet(draft, standing, standing.sheet().get(), me);
        }
        String slot = slot(booking);
        if (booking.revision() == null) {
            return draft.stage(Stage.NO_PROGRAM)
                    .head(slot, "Attach a program first.", standing.prepared().says());
        }
        StoredAnswer answer = standing.prepared().answer();
        if (booking.state() == BookingState.BOOKED
                && (answer == null || answer.verdict() != StoredAnswer.Verdict.WITHIN)) {
            return draft.stage(Stage.NOT_WITHIN)
                    .head(
                            slot,
                            "Not released: the check is not passed.",
                            standing.prepared().says());
        }
        if (booking.attendant() == null) {
            return draft.stage(Stage.NO_ATTENDANT)
                    .head(slot, "Nobody is named for the e-stop.", "Name an attendant on the booking.");
        }
        boolean over = !now.isBefore(booking.end());
        return draft.stage(over ? Stage.IDLE : Stage.EARLY)
                .head(
                        slot,
                        over ? "The slot is over." : "Next at " + labTime.time(booking.start()) + ".",
                        over ? "" : "The list opens shortly before the start.");
    }

    private BenchDraft onSheet(BenchDraft draft, Standing standing, Sheet sheet, SignedInPerson me) {
        Booking booking = standing.prepared().booking();
        if (sheet.next().isEmpty()) {
            return draft.stage(Stage.GATES)
                    .head(
                            slot(booking),
                            "Signed. Not ready yet.",
                            standing.obstacles().isEmpty()
                                    ? ""
                                    : standing.obstacles().get(0).line());
        }
        Optional<Part> mine = part(sheet, booking, me).filter(sheet::mayBeSigned);
        return mine.isEmpty() ? waiting(draft, sheet, booking) : step(draft, standing, sheet, mine.get(), me);
    }

    /** Whose part the account may fill in: a shared screen the next one, a person their own. */
    private static Optional<Part> part(Sheet sheet, Booking booking, SignedInPerson me) {
        if (me.is(Role.BENCH)) {
            return sheet.next();
        }
        if (sheet.attendant().equals(me.id())) {
            return Optional.of(Part.ATTENDANT);
        }
        if (booking.operator().equals(me.id())) {
            return Optional.of(Part.OPERATOR);
        }
        return me.isLabStaff() ? Optional.of(Part.RELEASER) : Optional.empty();
    }

    private BenchDraft waiting(BenchDraft draft, Sheet sheet, Booking booking) {
        Part next = sheet.next().orElseThrow();
        return draft.stage(Stage.WAIT)
                .head(title(sheet.list()) + ", " + slot(booking), "Waiting for the " + who(sheet, next) + ".", "");
    }

    private String who(Sheet sheet, Part part) {
        return switch (part) {
            case OPERATOR -> "operator, " + people.printedName(sheet.operator());
            case ATTENDANT -> "e-stop attendant, " + people.printedName(sheet.attendant());
            case RELEASER -> "technician";
        };
    }

    private BenchDraft step(BenchDraft draft, Standing standing, Sheet sheet, Part part, SignedInPerson me) {
        Step step = desk.step(sheet, part, me.id());
        String name = signerName(sheet, part, me);
        String fullPower =
                sheet.list() == SignoffList.BENCH && standing.prepared().answer() != null
                        ? BenchCards.fullPower(standing.prepared().answer().bench())
                        : "";
        if (step instanceof Step.Ask ask) {
            String kicker = sheet.list() == SignoffList.BENCH
                    ? item(sheet, ask.item().number()) + ", " + name
                    : title(sheet.list()) + " " + ask.position() + " of " + (ask.of() - 1) + ", " + name;
            return draft.stage(Stage.ASK)
                    .head(kicker, ask.item().challenge(), ask.item().hint())
                    .ask(new BenchView.Ask(
                            sheet.id().toString(), part.code(), ask.item(), ask.position() == 1, fullPower));
        }
        return sign(draft, (Step.Sign) step, sheet, part, me, fullPower);
    }

    private BenchDraft sign(
            BenchDraft draft, Step.Sign sign, Sheet sheet, Part part, SignedInPerson me, String fullPower) {
        boolean shared = me.is(Role.BENCH);
        String kicker = part == Part.RELEASER
                ? item(sheet, 9) + ", " + signerName(sheet, part, me)
                : title(sheet.list()) + ", " + signerName(sheet, part, me);
        return draft.stage(Stage.SIGN)
                .head(kicker, part == Part.RELEASER ? "Release this run?" : "Sign for what you answered.", "")
                .sign(new BenchView.Sign(
                        sheet.id().toString(),
                        part.code(),
                        sign.meaning(),
                        sign.statement().text(),
                        sign.statement().sha256(),
                        sign.answered(),
                        signers(sheet, part, me),
                        shared,
                        part == Part.RELEASER ? "Release" : "Sign",
                        fullPower));
    }

    /** Where the list is; the short one counts its own items and keeps their numbers on the card. */
    private static String item(Sheet sheet, int number) {
        return sheet.brief()
                ? "Short list " + (BRIEF.indexOf(number) + 1) + " of " + BRIEF.size() + ", item " + number
                : "Item " + number + " of 9";
    }

    private List<BenchView.Named> signers(Sheet sheet, Part part, SignedInPerson me) {
        if (!me.is(Role.BENCH)) {
            return List.of(new BenchView.Named(me.id().toString(), me.printedName()));
        }
        return switch (part) {
            case OPERATOR -> List.of(named(sheet.operator()));
            case ATTENDANT -> List.of(named(sheet.attendant()));
            case RELEASER ->
                desk.mayRelease(sheet.booking()).stream().map(this::named).toList();
        };
    }

    private BenchView.Named named(PersonId person) {
        return new BenchView.Named(person.toString(), people.printedName(person));
    }

    private String signerName(Sheet sheet, Part part, SignedInPerson me) {
        return switch (part) {
            case OPERATOR -> people.printedName(sheet.operator());
            case ATTENDANT -> people.printedName(sheet.attendant());
            case RELEASER -> me.is(Role.BENCH) ? "technician" : me.printedName();
        };
    }

    private static String title(SignoffList list) {
        return switch (list) {
            case SESSION -> "Session list";
            case BENCH -> "Bench list";
            case HANDOVER -> "Handover";
        };
    }

    private String slot(Booking booking) {
        return people.printedName(booking.operator()) + ", " + labTime.span(booking.start(), booking.end());
    }
}
