package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BulkMoves.Done;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.message.Messages;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A cell goes down and everybody is moved in one act. It is Wed 11 March, 09:00 UTC. */
class BulkMovesIT {

    abstract static class Cases extends BulkMoveCases {

        @Autowired
        Turns turns;

        @Autowired
        Messages messages;

        @Test
        void movesEverybodyCountsNobodyTellsThemAndUndoesIt() {
            CellId bittern = lab().cell(15);
            Person noor = student("Noor Candlewick", avocet, bittern);
            Person mateo = student("Mateo Ironbark", avocet, bittern);
            Person yuki = student("Yuki Halfmoon", avocet, bittern);
            Person only = student("Kofi Marblewood", avocet);
            Person adaeze = lab().technician("Adaeze Lanternby");
            Booking one = lab().booked(avocet, THURSDAY_NOON, noor, mateo);
            Booking two = lab().booked(avocet, "2026-03-12T12:37:00Z", yuki, null);
            Booking stuck = lab().booked(avocet, "2026-03-12T13:07:00Z", only, null);
            states.tagOut(avocet, adaeze.id(), "cable chafed");
            int ahead = desk.quotaOf(noor.id()).ahead();

            List<Planned> plan = bulkMoves.plan(everybody());
            assertThat(plan)
                    .extracting(planned -> planned.booking().id())
                    .containsExactly(one.id(), two.id(), stuck.id());
            assertThat(plan.get(2).to()).isNull();
            assertThat(plan.get(0).to()).isNotEqualTo(plan.get(1).to());
            assertThat(moveAll("another plan", adaeze)).isInstanceOf(Done.Refused.class);
            assertThat(bookings.find(one.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);

            UUID id = ((Done.All) moveAll(BulkMoves.written(plan), adaeze)).id();

            Booking moved = bookings.of(noor.id(), clock.instant()).get(0);
            assertThat(moved.cell()).isEqualTo(bittern);
            assertThat(moved.start()).as("the nearest time").isEqualTo(Instant.parse("2026-03-12T12:15:00Z"));
            assertThat(moved.attendant()).isEqualTo(mateo.id());
            assertThat(desk.quotaOf(noor.id()).ahead()).isEqualTo(ahead);
            assertThat(messages.of(noor.id(), 1).get(0).lines()).anyMatch(line -> line.contains("cable chafed"));
            assertThat(messages.of(mateo.id(), 1).get(0).subject()).startsWith("Your turn at the e-stop was moved");
            assertThat(turns.makeUpsOf(only.id())).hasSize(1);
            assertThat(waitingList.of(only.id())).singleElement().matches(WaitingList.Waiting::goesFirst);
            assertThat(bookings.of(only.id(), clock.instant())).isEmpty();

            assertThat(bulkMoves.undo(id, adaeze.id()))
                    .as("the cell is still down")
                    .isPresent();
            assertThat(bookings.of(noor.id(), clock.instant()).get(0).cell()).isEqualTo(bittern);
        }

        @Test
        void putsEverybodyBackWhenTheMoveIsUndone() {
            CellId bittern = lab().cell(15);
            Person noor = student("Noor Candlewick", avocet, bittern);
            Person only = student("Kofi Marblewood", avocet);
            Person adaeze = lab().technician("Adaeze Lanternby");
            lab().booked(avocet, THURSDAY_NOON, noor, null);
            lab().booked(avocet, "2026-03-12T13:07:00Z", only, null);
            UUID id = ((Done.All) moveAll(BulkMoves.written(bulkMoves.plan(everybody())), adaeze)).id();

            assertThat(bulkMoves.undo(id, adaeze.id())).isEmpty();

            assertThat(bookings.of(noor.id(), clock.instant())).singleElement().satisfies(back -> {
                assertThat(back.cell()).isEqualTo(avocet);
                assertThat(back.start()).isEqualTo(Instant.parse(THURSDAY_NOON));
            });
            assertThat(bookings.of(only.id(), clock.instant())).hasSize(1);
            assertThat(turns.makeUpsOf(only.id())).isEmpty();
            assertThat(waitingList.of(only.id())).isEmpty();
            assertThat(bulkMoves.undo(id, adaeze.id())).as("once").isPresent();
        }

        @Test
        void endsTheWaitOfTheMoveThatIsUndoneAndNoOther() {
            Person only = student("Kofi Marblewood", avocet);
            Person adaeze = lab().technician("Adaeze Lanternby");
            lab().booked(avocet, THURSDAY_NOON, only, null);
            UUID first = ((Done.All) moveAll(BulkMoves.written(bulkMoves.plan(everybody())), adaeze)).id();
            clock.moveBy(Duration.ofMinutes(1));
            lab().booked(avocet, "2026-03-12T13:07:00Z", only, null);
            UUID second = ((Done.All) moveAll(BulkMoves.written(bulkMoves.plan(everybody())), adaeze)).id();
            clock.moveBy(Duration.ofMinutes(1));
            waitingList.round();
            assertThat(waitingList.of(only.id()))
                    .hasSize(2)
                    .allSatisfy(wait -> assertThat(wait.offer()).isNotNull());

            assertThat(bulkMoves.undo(second, adaeze.id())).isEmpty();
            WaitingList.Waiting left = waitingList.of(only.id()).get(0);
            assertThat(waitingList.of(only.id())).hasSize(1);
            assertThat(left.joinedAt())
                    .isEqualTo(bulkMoves.find(first).orElseThrow().at());
            assertThat(waitingList.decline(Objects.requireNonNull(left.offer()).id(), only.id()))
                    .as("its offer still stands")
                    .isTrue();
        }

        @Test
        void givesNobodyTheOldSlotBackWhoHasGotAnother() {
            Person offered = student("Kofi Marblewood", avocet);
            Person madeUp = student("Yuki Halfmoon", avocet);
            Person adaeze = lab().technician("Adaeze Lanternby");
            lab().booked(avocet, THURSDAY_NOON, offered, null);
            lab().booked(avocet, "2026-03-12T13:07:00Z", madeUp, null);
            UUID id = ((Done.All) moveAll(BulkMoves.written(bulkMoves.plan(everybody())), adaeze)).id();
            clock.moveBy(Duration.ofMinutes(1));
            waitingList.round();
            UUID offer = Objects.requireNonNull(
                            waitingList.of(offered.id()).get(0).offer())
                    .id();
            assertThat(waitingList.accept(offer, offered.id())).isInstanceOf(BookingDesk.Outcome.Booked.class);
            Booking another = lab().booked(avocet, "2026-03-12T15:07:00Z", madeUp, null);
            turns.use(another.id(), madeUp.id());

            assertThat(bulkMoves.undo(id, adaeze.id())).isEmpty();

            assertThat(bookings.of(offered.id(), clock.instant()))
                    .singleElement()
                    .matches(booking -> !booking.start().equals(Instant.parse(THURSDAY_NOON)));
            assertThat(turns.makeUpsOf(offered.id()))
                    .as("the move stands for them, and so does what they got for it")
                    .singleElement()
                    .matches(Turns.MakeUp::stands);
            assertThat(bookings.of(madeUp.id(), clock.instant()))
                    .extracting(Booking::id)
                    .containsExactly(another.id());
            assertThat(bulkMoves.find(id).orElseThrow().moved()).hasSize(2).allMatch(BulkMoves.Moved::stays);
        }

        @Test
        void takesOnlyStaffToTheStopOfARestrictedCell() {
            CellId bittern = lab().cell(15);
            CellId curlew = lab().cell(22);
            Person noor = student("Noor Candlewick", avocet, bittern, curlew);
            Person mateo = student("Mateo Ironbark", avocet, bittern, curlew);
            Person yuki = student("Yuki Halfmoon", avocet, bittern);
            Person adaeze = lab().technician("Adaeze Lanternby");
            states.restrict(bittern, adaeze.id(), "new gripper");
            lab().booked(curlew, "2026-03-12T12:22:00Z", student("Kofi Marblewood", curlew), null);
            Booking withStudent = lab().booked(avocet, THURSDAY_NOON, noor, mateo);
            Booking withStaff = lab().booked(avocet, "2026-03-12T13:07:00Z", yuki, adaeze);
            List<Planned> plan = bulkMoves.plan(everybody());
            assertThat(place(plan, withStudent).cell())
                    .as("later, but where Mateo may attend")
                    .isEqualTo(curlew);
            assertThat(place(plan, withStudent).start()).isAfter(Instant.parse("2026-03-12T12:22:00Z"));
            assertThat(place(plan, withStaff).cell()).as("staff attend there").isEqualTo(bittern);

            UUID id = ((Done.All) moveAll(BulkMoves.written(plan), adaeze)).id();
            assertThat(bulkMoves.find(id).orElseThrow().moved())
                    .extracting(moved -> bookings.find(Objects.requireNonNull(moved.now()))
                            .orElseThrow()
                            .attendant())
                    .as("nobody lost an attendant")
                    .containsExactlyInAnyOrder(mateo.id(), adaeze.id());
            assertThat(bookings.find(withStaff.id()).orElseThrow().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
        }

        private static Slot place(List<Planned> plan, Booking booking) {
            return Objects.requireNonNull(plan.stream()
                    .filter(one -> one.booking().id().equals(booking.id()))
                    .findFirst()
                    .orElseThrow()
                    .to());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
