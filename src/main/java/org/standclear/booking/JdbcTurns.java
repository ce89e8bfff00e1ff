package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Lost turns in the database. */
@Service
@Transactional
class JdbcTurns implements Turns {

    private static final int LONGEST_WORDS = 400;
    private static final int LOST_SHOWN = 100;
    private static final String ALL = """
            select b.id, b.starts_at, p.words, e.excused_by, e.excused_at from bookings b
            left join booking_pleas p on p.booking_id = b.id left join booking_excuses e on e.booking_id = b.id
            where\s""";
    private static final String SELECT = ALL + "b.state in ('MISSED', 'LATE_CANCELLED') and ";

    private final JdbcClient jdbc;
    private final BookingRows rows;
    private final BookingMoves moves;
    private final WhoActs whoActs;
    private final MakeUps makeUps;
    private final NotCounted notCounted;
    private final Messages messages;
    private final Trail trail;
    private final Labs labs;
    private final LabTime labTime;

    JdbcTurns(
            JdbcClient jdbc,
            BookingRows rows,
            BookingMoves moves,
            WhoActs whoActs,
            MakeUps makeUps,
            NotCounted notCounted,
            Messages messages,
            Trail trail,
            Labs labs,
            LabTime labTime) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.moves = moves;
        this.whoActs = whoActs;
        this.makeUps = makeUps;
        this.notCounted = notCounted;
        this.messages = messages;
        this.trail = trail;
        this.labs = labs;
        this.labTime = labTime;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Lost> lost(int days) {
        Instant since = moves.now().minus(Duration.ofDays(days));
        String lately = "b.lab_id = :lab and b.ends_at > :since and b.starts_at > :earliest and b.starts_at < :now";
        // each state by itself, H2 follows a list of them to all; and by starts, a slot ends within a day of its own
        return rows(
                ALL + "b.state = 'MISSED' and " + lately + " union all " + ALL + "b.state = 'LATE_CANCELLED' and "
                        + lately + " order by starts_at desc, id",
                Map.of(
                        "lab",
                        labs.theLab().id().value(),
                        "since",
                        SqlTime.stored(since).atOffset(java.time.ZoneOffset.UTC),
                        "earliest",
                        SqlTime.stored(since.minus(Duration.ofDays(1))).atOffset(java.time.ZoneOffset.UTC),
                        "now",
                        moves.now().plus(Duration.ofDays(1)).atOffset(java.time.ZoneOffset.UTC)));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Lost> lostBy(PersonId person) {
        return rows(
                SELECT + "b.lab_id = :lab and b.operator_id = :person order by b.starts_at desc, b.id fetch first "
                        + LOST_SHOWN + " rows only",
                Map.of("lab", labs.theLab().id().value(), "person", person.value()));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Lost> find(BookingId booking) {
        return rows(SELECT + "b.id = :id", Map.of("id", booking.value())).stream()
                .findFirst();
    }

    private List<Lost> rows(String sql, Map<String, ?> values) {
        List<LostWords> told = jdbc.sql(sql).params(values).query(LostWords::of).list();
        Map<BookingId, Booking> lost = rows
                .all(told.stream().map(LostWords::booking).toList())
                .stream()
                .map(BookingLife::booking)
                .collect(Collectors.toMap(Booking::id, booking -> booking));
        return told.stream()
                .map(one -> one.about(Objects.requireNonNull(lost.get(one.booking()))))
                .toList();
    }

    @Override
    public Optional<String> explain(BookingId booking, PersonId by, String words) {
        if (PlainText.check(words, LONGEST_WORDS) instanceof PlainText.Refused refused) {
            return Optional.of(refused.says());
        }
        Booking lost = moves.lock(booking).booking();
        if (!isLost(lost) || !lost.operator().equals(by)) {
            return Optional.of("The booking is " + lost.state().words() + ": there is nothing to explain.");
        }
        String kept = ((PlainText.Fine) PlainText.check(words, LONGEST_WORDS)).text();
        jdbc.sql("delete from booking_pleas where booking_id = :id")
                .param("id", booking.value())
                .update();
        jdbc.sql("insert into booking_pleas (booking_id, words, sent_at) values (:id, :words, :at)")
                .param("id", booking.value())
                .param("words", kept)
                .param("at", SqlTime.toSql(moves.now()))
                .update();
        return Optional.empty();
    }

    @Override
    public boolean excuse(BookingId id, boolean makeUp, PersonId by) {
        whoActs.asStaff(by, "booking");
        Booking lost = moves.lock(id).booking();
        if (!isLost(lost) || find(id).filter(one -> one.excusedBy() != null).isPresent()) {
            return false;
        }
        jdbc.sql("insert into booking_excuses (booking_id, excused_by, excused_at) values (:id, :by, :at)")
                .param("id", id.value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(moves.now()))
                .update();
        boolean given = makeUp
                && makeUps.grant(labs.theLab().id(), lost.operator(), id, "a lost turn was excused", by, moves.now());
        tell("booking.excused", id, by, "Excused: no quota counts it" + (given ? "; a make-up was given" : ""));
        messages.tell(Message.of(
                lost.operator(),
                "excused",
                "Not counted: your booking of " + labTime.day(lost.start()),
                given
                        ? List.of(
                                "Staff have excused it, so no quota counts it.",
                                "You have a make-up: one booking beyond the quotas, and an early place on the waiting list.")
                        : List.of("Staff have excused it, so no quota counts it."),
                "/bookings/" + id));
        return true;
    }

    @Override
    public boolean countAgain(BookingId id, PersonId by) {
        whoActs.asStaff(by, "booking");
        moves.lock(id);
        int removed = jdbc.sql("delete from booking_excuses where booking_id = :id")
                .param("id", id.value())
                .update();
        if (removed == 1) {
            makeUps.takeBackFor(id);
            tell("booking.counted-again", id, by, "The excuse was taken back: it counts again");
        }
        return removed == 1;
    }

    @Override
    public void countAnew(PersonId person, PersonId by) {
        whoActs.asStaff(by, "person");
        whoActs.ofThisLab(person);
        jdbc.sql("""
                insert into booking_resets (id, lab_id, person_id, reset_by, reset_at)
                values (:id, :lab, :person, :by, :at)""")
                .param("id", Id.newValue())
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(moves.now()))
                .update();
        tell("booking.counted-anew", person, by, "What the person lost so far is not counted any more");
    }

    @Override
    public Optional<String> giveMakeUp(PersonId person, String reason, PersonId by) {
        whoActs.asStaff(by, "person");
        whoActs.ofThisLab(person);
        if (PlainText.check(reason, LONGEST_WORDS) instanceof PlainText.Refused refused) {
            return Optional.of(refused.says());
        }
        String kept = ((PlainText.Fine) PlainText.check(reason, LONGEST_WORDS)).text();
        makeUps.grant(labs.theLab().id(), person, null, kept, by, moves.now());
        tellOfMakeUp(person, kept, by);
        return Optional.empty();
    }

    @Override
    public boolean giveMakeUpFor(BookingId lost, PersonId person, PersonId by) {
        String reason = "minutes that precautionary stops took";
        boolean given = makeUps.grant(labs.theLab().id(), person, lost, reason, by, moves.now());
        if (given) {
            tellOfMakeUp(person, reason, by);
        }
        return given;
    }

    private void tellOfMakeUp(PersonId person, String why, PersonId by) {
        tell("booking.make-up-given", person, by, "Gave a make-up: one booking beyond the quotas");
        messages.tell(Message.of(
                person,
                "make-up",
                "You have a make-up",
                List.of(
                        "One booking beyond the quotas, and an early place on the waiting list.",
                        "Why: " + why,
                        "It can be used until " + labTime.day(moves.now().plus(MakeUps.VALID)) + "."),
                "/book"));
    }

    @Override
    public Optional<String> withdraw(UUID makeUp, String reason, PersonId by) {
        whoActs.asStaff(by, "make-up");
        if (PlainText.check(reason, LONGEST_WORDS) instanceof PlainText.Refused refused) {
            return Optional.of(refused.says());
        }
        String kept = ((PlainText.Fine) PlainText.check(reason, LONGEST_WORDS)).text();
        if (!makeUps.withdraw(makeUp, kept, by, moves.now())) {
            return Optional.of("It was used or withdrawn meanwhile; nothing was changed.");
        }
        tell("booking.make-up-taken-back", makeUp, by, "Withdrew a make-up that was not used");
        makeUps.find(makeUp, moves.now())
                .ifPresent(one -> messages.tell(Message.of(
                        one.person(),
                        "make-up",
                        "A make-up of yours was withdrawn",
                        List.of("Why: " + kept),
                        "/book")));
        return Optional.empty();
    }

    @Override
    public boolean use(BookingId booking, PersonId operator) {
        Optional<UUID> standing = makeUps.standing(operator, moves.now());
        standing.ifPresent(id -> makeUps.use(id, booking));
        return standing.isPresent();
    }

    @Override
    @Transactional(readOnly = true)
    public List<MakeUp> makeUps(int days) {
        return makeUps.ofLab(labs.theLab().id(), moves.now().minus(Duration.ofDays(days)), moves.now());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<MakeUp> makeUp(UUID id) {
        return makeUps.find(id, moves.now());
    }

    @Override
    @Transactional(readOnly = true)
    public List<MakeUp> makeUpsOf(PersonId person) {
        return makeUps.of(person, moves.now());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Instant> countedAnew(PersonId person) {
        return notCounted.resetOf(person);
    }

    private static boolean isLost(Booking booking) {
        return booking.state() == BookingState.MISSED || booking.state() == BookingState.LATE_CANCELLED;
    }

    private void tell(String kind, Object subject, PersonId by, String words) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, subject, by, words));
    }
}
