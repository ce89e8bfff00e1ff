package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.people.ScreenPlaces;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;
import org.standclear.program.Revision;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Disagreement;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.rules.Comparison;
import org.standclear.signoff.rules.Comparison.Difference;
import org.standclear.signoff.rules.Items;
import org.standclear.signoff.rules.Reading;
import org.standclear.signoff.rules.StatementText;

/** Keeps the lists in the database; every answer and signature is taken under the locks of booking and cell. */
@Service
class JdbcSignoffDesk implements SignoffDesk {

    static final String MOVED_ON = "The list went on while this page was open. Nothing was stored; read it again.";

    private static final Obstacle BOUND_MEANWHILE = new Obstacle(
            "bound-meanwhile",
            "Another release was signed at the same moment with one of these people, or on this cell.",
            "Nothing was stored; look again.");

    private final Bookings bookings;
    private final People people;
    private final ScreenPlaces screens;
    private final Upkeep upkeep;
    private final PreparedView prepared;
    private final Lists lists;
    private final Signing signing;
    private final Releasing releasing;
    private final DraftRows drafts;
    private final FirstAnswers firstAnswers;
    private final ReleaseRows releases;
    private final GateFacts gates;
    private final OneStop oneStop;
    private final SignoffTrail trail;
    private final Clock clock;

    JdbcSignoffDesk(
            Bookings bookings,
            People people,
            ScreenPlaces screens,
            Upkeep upkeep,
            PreparedView prepared,
            Lists lists,
            Signing signing,
            Releasing releasing,
            DraftRows drafts,
            FirstAnswers firstAnswers,
            ReleaseRows releases,
            GateFacts gates,
            OneStop oneStop,
            SignoffTrail trail,
            Clock clock) {
        this.bookings = bookings;
        this.people = people;
        this.screens = screens;
        this.upkeep = upkeep;
        this.prepared = prepared;
        this.lists = lists;
        this.signing = signing;
        this.releasing = releasing;
        this.drafts = drafts;
        this.firstAnswers = firstAnswers;
        this.releases = releases;
        this.gates = gates;
        this.oneStop = oneStop;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Standing look(BookingId id) {
        Instant now = now();
        Upkeep.Current current = upkeep.lock(id, now);
        Booking booking = current.booking();
        boolean before = booking.state().ordinal() <= BookingState.RELEASED.ordinal();
        return new Standing(
                prepared.of(booking, current.cell()),
                lists.due(booking, current.cell(), now),
                before ? gates.obstacles(booking, current.cell(), now) : List.of(),
                releases.latest(id),
                lists.refusedBefore(booking));
    }

    @Override
    @Transactional(readOnly = true)
    public Step step(Sheet sheet, Part part, PersonId account) {
        List<ListItem> items = Items.of(sheet.list(), part, sheet.brief());
        Answers answers = drafts.of(sheet.id(), part, account);
        for (int i = 0; i < items.size(); i++) {
            if (!answers.has(items.get(i).number())) {
                return new Step.Ask(items.get(i), i + 1, items.size() + 1);
            }
        }
        List<Answered> answered = new ArrayList<>(items.stream()
                .map(item -> new Answered(item.number(), item.challenge(), item.inWords(answers.of(item.number()))))
                .toList());
        if (sheet.list() == SignoffList.SESSION) {
            answered.add(new Answered(Items.AS_LEFT, Items.AS_LEFT_ASKS, lists.asLeft(sheet)));
        }
        return new Step.Sign(
                StatementText.meaning(sheet.list(), part),
                lists.statement(sheet, part, answers),
                answered,
                items.size() + 1,
                items.size() + 1);
    }

    @Override
    @Transactional
    public Entered enter(EnterAnswer answer) {
        Instant now = now();
        Optional<Sheet> sheet = signable(answer.sheet(), answer.part(), answer.account(), now);
        if (sheet.isEmpty()) {
            return new Entered.MovedOn(MOVED_ON);
        }
        List<Obstacle> refusals = mayEnter(sheet.get(), answer.part(), answer.account(), now);
        if (!refusals.isEmpty()) {
            return new Entered.Refused("part", refusals.get(0).line());
        }
        return Items.of(sheet.get().list(), answer.part(), sheet.get().brief()).stream()
                .filter(item -> item.number() == answer.item())
                .findFirst()
                .map(item -> entered(sheet.get(), item, answer, now))
                .orElseGet(() -> new Entered.MovedOn(MOVED_ON));
    }

    private Entered entered(Sheet sheet, ListItem item, EnterAnswer answer, Instant now) {
        Reading reading = Reading.of(item, answer.values());
        if (reading instanceof Reading.Unread unread) {
            return new Entered.Refused(unread.field(), unread.says());
        }
        Reading.Read read = (Reading.Read) reading;
        firstAnswers.keep(sheet, answer.part(), answer.account(), now);
        Optional<Difference> difference = Comparison.withKnown(
                sheet.list(), answer.part(), item.number(), read.values(), lists.expected(sheet, now));
        if (difference.isPresent()) {
            Disagreement disagreement = signing.keep(sheet, answer.part(), difference.get(), now);
            trail.disagreed(sheet, answer.part(), item.number(), answer.account());
            return new Entered.Disagrees(disagreement);
        }
        drafts.put(sheet.id(), answer.part(), answer.account(), item.number(), read.values());
        return new Entered.Kept();
    }

    @Override
    @Transactional
    public void stepBack(UUID sheet, Part part, PersonId account) {
        Answers answers = drafts.of(sheet, part, account);
        if (!answers.byItem().isEmpty()) {
            drafts.remove(sheet, part, account, answers.byItem().lastKey());
        }
    }

    @Override
    @Transactional
    public Signed sign(SignPart wanted) {
        Optional<Signed> pinRefused = signing.whoSigns(wanted, isBenchScreen(wanted.account()));
        if (pinRefused.isPresent()) {
            return pinRefused.get();
        }
        Instant now = now();
        Optional<Sheet> sheet = signable(wanted.sheet(), wanted.part(), wanted.account(), now);
        return sheet.isEmpty() ? new Signed.MovedOn(MOVED_ON) : sign(sheet.get(), wanted, now);
    }

    /** Asked anew, the gates say in words what the database refused; nothing of the first try is kept. */
    private Signed sign(Sheet sheet, SignPart wanted, Instant now) {
        if (wanted.part() != Part.RELEASER && sheet.list() != SignoffList.HANDOVER) {
            return signing.sign(sheet, wanted, now);
        }
        List<PersonId> bound = List.of(sheet.operator(), sheet.attendant(), wanted.signer());
        return oneStop.unlessBound(bound, () -> signing.sign(sheet, wanted, now))
                .or(() -> oneStop.unlessBound(bound, () -> signing.sign(sheet, wanted, now)))
                .orElseGet(() -> new Signed.Refused("signer", List.of(BOUND_MEANWHILE)));
    }

    @Override
    @Transactional(readOnly = true)
    public List<PersonId> mayRelease(BookingId id) {
        Booking booking = bookings.find(id).orElseThrow();
        Revision revision = upkeep.revision(booking);
        return revision == null ? List.of() : releasing.mayRelease(booking, revision.author(), now());
    }

    /** The sheet, if that part of it may be signed now; locks and brings the booking up to date first. */
    private Optional<Sheet> signable(UUID id, Part part, PersonId account, Instant now) {
        // a screen that stands at another cell shows no list of this one, so the form is not from its page
        Optional<Sheet> found = lists.find(id)
                .filter(sheet -> screens.cellOf(account)
                        .filter(cell -> !cell.equals(sheet.cell()))
                        .isEmpty());
        if (found.isEmpty()) {
            return found;
        }
        upkeep.lock(found.get().booking(), now);
        return lists.find(id).filter(sheet -> sheet.mayBeSigned(part));
    }

    /** A shared screen takes anybody's answers, since the signature asks for a PIN; an own device only its owner's. */
    private List<Obstacle> mayEnter(Sheet sheet, Part part, PersonId account, Instant now) {
        if (isBenchScreen(account)) {
            return List.of();
        }
        List<Obstacle> refusals = new ArrayList<>();
        switch (part) {
            case OPERATOR -> signing.sameAs(sheet.operator(), account).ifPresent(refusals::add);
            case ATTENDANT -> signing.sameAs(sheet.attendant(), account).ifPresent(refusals::add);
            case RELEASER ->
                refusals.addAll(releasing.refusals(
                        account,
                        bookings.find(sheet.booking()).orElseThrow(),
                        lists.revision(sheet).author(),
                        now));
        }
        return refusals;
    }

    private boolean isBenchScreen(PersonId account) {
        return people.find(account).filter(person -> isBench(person)).isPresent();
    }

    private static boolean isBench(Person person) {
        return person.is(Role.BENCH);
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
