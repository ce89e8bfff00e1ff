package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.standclear.booking.BookingState.*;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;

class BookingLifeTests {

    private static final Instant START = Instant.parse("2026-03-12T14:07:00Z");
    private static final PersonId OPERATOR = PersonId.next();
    private static final PersonId ATTENDANT = PersonId.next();
    private static final BookingSettings SETTINGS = BookingSettings.DEFAULTS;

    /** The table of 02 section 2, written out by hand: what is not here must be refused. */
    private static final Map<BookingEvent, Map<BookingState, BookingState>> ALLOWED = new EnumMap<>(Map.ofEntries(
            Map.entry(BookingEvent.NAME_PROGRAM, Map.of(BOOKED, BOOKED, CHECKED, BOOKED, READY, BOOKED)),
            Map.entry(
                    BookingEvent.NAME_ATTENDANT,
                    Map.of(BOOKED, BOOKED, CHECKED, CHECKED, READY, CHECKED, RELEASED, RELEASED, STOPPED, STOPPED)),
            Map.entry(BookingEvent.HAND_OVER, Map.of(RUNNING, RUNNING)),
            Map.entry(
                    BookingEvent.ASK_FOR_ATTENDANT,
                    Map.of(BOOKED, BOOKED, CHECKED, CHECKED, READY, CHECKED, RELEASED, RELEASED, STOPPED, STOPPED)),
            Map.entry(BookingEvent.CHECK, Map.of(BOOKED, CHECKED)),
            Map.entry(BookingEvent.GO_BACK_TO_BOOKED, Map.of(CHECKED, BOOKED, READY, BOOKED, RELEASED, BOOKED)),
            Map.entry(BookingEvent.CHECK_IN, Map.of(BOOKED, BOOKED, CHECKED, CHECKED)),
            Map.entry(BookingEvent.BECOME_READY, Map.of(CHECKED, READY)),
            Map.entry(BookingEvent.RELEASE, Map.of(READY, RELEASED)),
            Map.entry(BookingEvent.GO_BACK_TO_READY, Map.of(RELEASED, READY)),
            Map.entry(BookingEvent.START, Map.of(RELEASED, RUNNING)),
            Map.entry(BookingEvent.STOP, Map.of(RUNNING, STOPPED)),
            Map.entry(BookingEvent.RESET, Map.of(STOPPED, READY)),
            Map.entry(BookingEvent.RESET_ANEW, Map.of(STOPPED, CHECKED)),
            Map.entry(BookingEvent.FINISH, Map.of(RUNNING, FINISHED, STOPPED, FINISHED)),
            Map.entry(BookingEvent.CLOSE_OUT, Map.of(FINISHED, CLOSED_OUT)),
            Map.entry(BookingEvent.CANCEL, Map.of(BOOKED, CANCELLED, CHECKED, CANCELLED, READY, CANCELLED)),
            Map.entry(
                    BookingEvent.CANCEL_LATE,
                    Map.of(BOOKED, LATE_CANCELLED, CHECKED, LATE_CANCELLED, READY, LATE_CANCELLED)),
            Map.entry(BookingEvent.MISS, Map.of(BOOKED, MISSED, CHECKED, MISSED)),
            Map.entry(
                    BookingEvent.MOVE,
                    Map.of(BOOKED, MOVED_BY_STAFF, CHECKED, MOVED_BY_STAFF, READY, MOVED_BY_STAFF))));

    private static BookingLife in(BookingState state) {
        return in(state, ATTENDANT, null, null);
    }

    private static BookingLife in(
            BookingState state, @Nullable PersonId attendant, @Nullable Instant checkedIn, @Nullable Instant started) {
        return new BookingLife(
                new BookingLife.Entry(
                        BookingId.next(), CellId.next(), START, START.plusSeconds(1800), OPERATOR, null, null, false),
                new BookingLife.Stored(state, attendant, RevisionId.next(), checkedIn, started, 7));
    }

    private static Stream<Arguments> everyStateAndEvent() {
        return Stream.of(BookingState.values())
                .flatMap(state -> Stream.of(BookingEvent.values()).map(event -> Arguments.of(state, event)));
    }

    @ParameterizedTest
    @MethodSource("everyStateAndEvent")
    void movesByTheTableAndRefusesTheRestWithTheCurrentState(BookingState state, BookingEvent event) {
        BookingLife life = in(state);
        BookingState next = ALLOWED.getOrDefault(event, Map.of()).get(state);

        Optional<String> refusal = life.take(event);

        if (next != null) {
            assertThat(refusal).isEmpty();
            assertThat(life.booking().state()).isEqualTo(next);
            assertThat(life.booking().version()).isEqualTo(8);
        } else {
            assertThat(refusal.orElseThrow()).contains("The booking is " + state.words() + " and cannot ");
            assertThat(life.booking().state()).isEqualTo(state);
            assertThat(life.booking().version()).isEqualTo(7);
        }
    }

    @Test
    void knowsEveryEventInTheTable() {
        assertThat(ALLOWED.keySet()).containsExactlyInAnyOrder(BookingEvent.values());
    }

    @Test
    void saysWhenTheMoveWouldBePossible() {
        assertThat(in(CHECKED).take(BookingEvent.RELEASE))
                .contains("The booking is checked and cannot be released; that is possible while it is ready.");
    }

    @Test
    void isNotCheckedWithoutAProgram() {
        BookingLife life = BookingLife.begun(in(BOOKED).entry(), null);
        assertThat(life.check().orElseThrow()).contains("without a program");
        assertThat(life.nameProgram(RevisionId.next())).isEmpty();
        assertThat(life.check()).isEmpty();
    }

    @Test
    void isNotReadyWithoutAnAttendant() {
        assertThat(in(CHECKED, null, START, null).becomeReady(START).orElseThrow())
                .contains("without an e-stop attendant");
    }

    @Test
    void opensTheSessionListAgainForANewAttendant() {
        BookingLife life = in(READY, ATTENDANT, START, null);
        assertThat(life.nameAttendant(PersonId.next())).isEmpty();
        assertThat(life.booking().state()).isEqualTo(CHECKED);
    }

    @Test
    void neverLetsTheOperatorAttend() {
        assertThatThrownBy(() -> in(BOOKED).nameAttendant(OPERATOR)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> BookingLife.begun(in(BOOKED).entry(), OPERATOR))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void letsTheAttendantGoWhileNothingMoves() {
        assertThat(in(BOOKED).askForAttendant()).isEmpty();
        BookingLife ready = in(READY, ATTENDANT, START, null);
        assertThat(ready.askForAttendant()).isEmpty();
        assertThat(ready.booking().state()).isEqualTo(CHECKED);
        assertThat(ready.booking().attendant()).isNull();
        assertThat(in(RUNNING, ATTENDANT, START, START).askForAttendant().orElseThrow())
                .contains("running");
    }

    @Test
    void changesHandsAtTheStopOnlyInARun() {
        PersonId next = PersonId.next();
        BookingLife running = in(RUNNING, ATTENDANT, START, START);
        assertThat(running.handOver(next)).isEmpty();
        assertThat(running.booking().attendant()).isEqualTo(next);
        assertThat(running.booking().state()).isEqualTo(RUNNING);
        assertThat(in(READY, ATTENDANT, START, null).handOver(next).orElseThrow())
                .contains("possible while it is running");
    }

    @Test
    void takesCheckInFromTenMinutesBeforeTheStart() {
        Duration opens = SETTINGS.checkInOpens();
        assertThat(in(BOOKED)
                        .checkIn(START.minus(opens).minusMillis(1), SETTINGS)
                        .orElseThrow())
                .contains("check-in opens 10 min before");
        assertThat(in(BOOKED).checkIn(START.minus(opens), SETTINGS)).isEmpty();
        assertThat(in(CHECKED, ATTENDANT, START, null).checkIn(START, SETTINGS).orElseThrow())
                .contains("checked in already");
    }

    @Test
    void isMissedWhenTheGraceIsOverAndNobodyCheckedIn() {
        Instant over = START.plus(SETTINGS.grace());
        assertThat(in(BOOKED).isDueMissed(over.minusMillis(1), SETTINGS)).isFalse();
        assertThat(in(BOOKED).isDueMissed(over, SETTINGS)).isTrue();
        assertThat(in(CHECKED).bookingAsOf(over, SETTINGS).state()).isEqualTo(MISSED);
        assertThat(in(BOOKED, ATTENDANT, START, null).isDueMissed(over, SETTINGS))
                .isFalse();
        assertThat(in(READY).isDueMissed(over, SETTINGS)).isFalse();
        assertThat(in(CANCELLED).isDueMissed(over, SETTINGS)).isFalse();
    }

    @Test
    void isCancelledLateWithinTwoHoursOfTheStart() {
        Instant limit = START.minus(Duration.ofMinutes(SETTINGS.lateCancelMinutes()));
        BookingLife inTime = in(BOOKED);
        BookingLife late = in(BOOKED);
        assertThat(inTime.cancel(limit, SETTINGS)).isEmpty();
        assertThat(late.cancel(limit.plusMillis(1), SETTINGS)).isEmpty();
        assertThat(inTime.booking().state()).isEqualTo(CANCELLED);
        assertThat(late.booking().state()).isEqualTo(LATE_CANCELLED);
    }

    @Test
    void endsARunThatWasStoppedOnlyByFinishing() {
        for (BookingState waits : new BookingState[] {BOOKED, CHECKED, READY}) {
            BookingLife life = in(waits, ATTENDANT, START, START);
            assertThat(life.cancel(START, SETTINGS).orElseThrow()).contains("has run already");
            assertThat(life.finish()).isEmpty();
            assertThat(life.booking().state()).isEqualTo(FINISHED);
            assertThat(in(waits).finish()).isPresent();
        }
    }

    @Test
    void countsAsCheckedInFromTheSessionListOn() {
        BookingLife life = in(CHECKED);
        assertThat(life.becomeReady(START)).isEmpty();
        assertThat(life.booking().checkedInAt()).isEqualTo(START);
    }
}
