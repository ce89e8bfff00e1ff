package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The waiting list in the database; rounds may run on every instance at once. */
@Service
@Transactional
class JdbcWaitingList implements WaitingList {

    /** So many at a time for one person: enough for a rush week, too few to lay hands on all of it. */
    private static final int AT_A_TIME = 3;

    private static final Duration FAIR_SPAN = Duration.ofDays(28);

    private final WaitRows rows;
    private final OfferRows offers;
    private final OfferMaker maker;
    private final MakeUps makeUps;
    private final BookingMoves moves;
    private final ClaimLocks locks;
    private final WhoActs whoActs;
    private final Trail trail;
    private final Labs labs;
    private final LabTime labTime;

    JdbcWaitingList(
            WaitRows rows,
            OfferRows offers,
            OfferMaker maker,
            MakeUps makeUps,
            BookingMoves moves,
            ClaimLocks locks,
            WhoActs whoActs,
            Trail trail,
            Labs labs,
            LabTime labTime) {
        this.rows = rows;
        this.offers = offers;
        this.maker = maker;
        this.makeUps = makeUps;
        this.moves = moves;
        this.locks = locks;
        this.whoActs = whoActs;
        this.trail = trail;
        this.labs = labs;
        this.labTime = labTime;
    }

    @Override
    public Joined join(JoinWait wanted) {
        Instant now = moves.now();
        whoActs.asOrFor(wanted.person(), wanted.by(), "person");
        whoActs.ofThisLab(wanted.person());
        if (wanted.cell() != null) {
            whoActs.cellOfThisLab(wanted.cell());
        }
        if (!wanted.until().isAfter(wanted.from()) || !wanted.until().isAfter(now)) {
            return new Joined.Refused("until", "The end has to be after the start, and not be past.");
        }
        if (labTime.date(wanted.until())
                .isAfter(labTime.date(now).plusDays(moves.settings().horizonDays()))) {
            return new Joined.Refused(
                    "day", "One can wait for slots up to " + moves.settings().horizonDays() + " days ahead.");
        }
        // whoever asks for several places at once gets them one after the other
        locks.lock(List.of(wanted.person().value()));
        List<Waiting> own = rows.liveOf(wanted.person());
        if (own.size() >= AT_A_TIME) {
            return new Joined.Refused(
                    "",
                    "You wait for " + own.size() + " slots already, " + AT_A_TIME
                            + " are allowed at a time. Leave one first.");
        }
        boolean twice = own.stream()
                .anyMatch(one -> java.util.Objects.equals(one.cell(), wanted.cell())
                        && one.from().isBefore(wanted.until())
                        && wanted.from().isBefore(one.until()));
        if (twice) {
            return new Joined.Refused("", "You wait for that time already.");
        }
        int letGo = offers.letGo(wanted.person(), wanted.cell(), wanted.from(), wanted.until(), now);
        if (letGo >= WaitRows.PASSES) {
            return new Joined.Refused(
                    "",
                    "You have let " + letGo + " offers of that time go, and the next are asked. Choose another time.");
        }
        Waiting waiting = put(wanted, false, letGo, now);
        return new Joined.On(waiting, placeOf(waiting));
    }

    /** Puts a wait on the list without asking whether one may. */
    public Waiting put(JoinWait wanted, boolean goesFirst, Instant now) {
        return put(wanted, goesFirst, 0, now);
    }

    /** Who has let offers of that time go stands behind those who have not, whatever list they come from. */
    private Waiting put(JoinWait wanted, boolean goesFirst, int passes, Instant now) {
        Waiting waiting = new Waiting(
                Id.newValue(),
                wanted.person(),
                wanted.cell(),
                SqlTime.stored(wanted.from()),
                SqlTime.stored(wanted.until()),
                wanted.course(),
                wanted.assignment(),
                goesFirst,
                passes,
                now,
                null);
        rows.insert(labs.theLab().id(), waiting);
        trail.append(TrailEntry.of(
                        labs.theLab().id(), "booking.wait-joined", waiting.id(), wanted.by(), "Joined the waiting list")
                .with("person", wanted.person())
                .with("from", waiting.from())
                .with("until", waiting.until()));
        return waiting;
    }

    private int placeOf(Waiting waiting) {
        List<Waiting> touching = inOrder().stream()
                .filter(one -> one.from().isBefore(waiting.until())
                        && waiting.from().isBefore(one.until())
                        && (one.cell() == null
                                || waiting.cell() == null
                                || one.cell().equals(waiting.cell())))
                .toList();
        return 1 + touching.stream().map(Waiting::id).toList().indexOf(waiting.id());
    }

    @Override
    public boolean leave(UUID wait, PersonId by) {
        PersonId person =
                rows.find(wait).orElseThrow(() -> new NotFoundException("wait")).person();
        whoActs.asOrFor(person, by, "wait");
        offers.openOf(wait).ifPresent(offer -> decline(offer.id(), by));
        boolean left = rows.end(wait, WaitRows.End.LEFT, moves.now());
        if (left) {
            trail.append(TrailEntry.of(labs.theLab().id(), "booking.wait-left", wait, by, "Left the waiting list"));
        }
        return left;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Waiting> of(PersonId person) {
        return rows.liveOf(person).stream()
                .map(one -> withOffer(one, offers.openOf(one.id()).orElse(null)))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Waiting> all() {
        Map<UUID, Offer> open = offers.open();
        return inOrder().stream().map(one -> withOffer(one, open.get(one.id()))).toList();
    }

    /** An offer whose time is over is none any more. */
    private Waiting withOffer(Waiting one, @Nullable Offer offer) {
        Offer open = offer != null && moves.now().isBefore(offer.until()) ? offer : null;
        return new Waiting(
                one.id(),
                one.person(),
                one.cell(),
                one.from(),
                one.until(),
                one.course(),
                one.assignment(),
                one.goesFirst(),
                one.passes(),
                one.joinedAt(),
                open);
    }

    private List<Waiting> inOrder() {
        Instant now = moves.now();
        Map<PersonId, Integer> turns = rows.turnsSince(labs.theLab().id(), now.minus(FAIR_SPAN));
        List<Waiting> live = rows.live(labs.theLab().id());
        Set<PersonId> withMakeUp =
                makeUps.havers(live.stream().map(Waiting::person).toList(), now);
        return live.stream()
                .sorted(Comparator.comparing((Waiting one) -> !one.goesFirst() && !withMakeUp.contains(one.person()))
                        .thenComparing(Waiting::passes)
                        .thenComparing(one -> turns.getOrDefault(one.person(), 0))
                        .thenComparing(Waiting::joinedAt)
                        .thenComparing(Waiting::id))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Offer> offer(UUID id) {
        return offers.find(id)
                .map(offer -> offer.state() == OfferState.OPEN && !moves.now().isBefore(offer.until())
                        ? new Offer(
                                offer.id(),
                                offer.waitId(),
                                offer.person(),
                                offer.slot(),
                                offer.until(),
                                OfferState.EXPIRED)
                        : offer);
    }

    /** The offer of this lab, for whom it was made to, or for staff. */
    private Offer locked(UUID id, PersonId by) {
        Offer offer = offers.lock(id).orElseThrow(() -> new NotFoundException("offer"));
        whoActs.asOrFor(offer.person(), by, "offer");
        return offer;
    }

    @Override
    public Outcome accept(UUID id, PersonId by) {
        Offer offer = locked(id, by);
        if (offer.state() != OfferState.OPEN || !moves.now().isBefore(offer.until())) {
            return new Outcome.Refused(
                    "offer-over",
                    "The offer is over since " + labTime.time(offer.until()) + "; the slot went to the next.",
                    List.of());
        }
        Optional<Waiting> waiting = rows.lockStanding(offer.waitId());
        if (waiting.isEmpty()) {
            return new Outcome.Refused(
                    "offer-over", "The wait that this offer was for has ended, and the offer with it.", List.of());
        }
        Outcome outcome = maker.book(offer, waiting.get(), by);
        if (outcome instanceof Outcome.Booked) {
            rows.end(offer.waitId(), WaitRows.End.BOOKED, moves.now());
        }
        return outcome;
    }

    @Override
    public boolean decline(UUID id, PersonId by) {
        Offer offer = locked(id, by);
        if (offer.state() != OfferState.OPEN) {
            return false;
        }
        offers.decide(id, OfferState.DECLINED, moves.now());
        rows.pass(offer.waitId(), moves.now());
        return true;
    }

    @Override
    @Transactional(propagation = org.springframework.transaction.annotation.Propagation.SUPPORTS)
    public int round() {
        return maker.round(this::inOrder);
    }
}
