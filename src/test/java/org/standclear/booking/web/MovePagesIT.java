package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Staff move bookings; people check in. It is Wed 11 March 2026, 09:00 UTC. */
class MovePagesIT {

    private static final String FRIDAY_TEN = "2026-03-13T10:07:00Z";

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Bookings bookings;

        @Autowired
        BookingDesk desk;

        @Autowired
        MovableClock clock;

        private @Nullable SampleLab lab;
        private @Nullable Booking booking;
        private @Nullable Person noor;
        private @Nullable Person mateo;
        private @Nullable Person adaeze;
        private CellId avocet = CellId.next();

        @BeforeEach
        void aBooking() {
            lab = new SampleLab(application);
            noor = lab().student("Noor Candlewick");
            mateo = lab().student("Mateo Ironbark");
            adaeze = lab().technician("Adaeze Lanternby");
            avocet = lab().cell(7);
            booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor(), mateo());
        }

        private SampleLab lab() {
            return Objects.requireNonNull(lab);
        }

        private Person noor() {
            return Objects.requireNonNull(noor);
        }

        private Person mateo() {
            return Objects.requireNonNull(mateo);
        }

        private Person adaeze() {
            return Objects.requireNonNull(adaeze);
        }

        private BookingId id() {
            return Objects.requireNonNull(booking).id();
        }

        private Booking now() {
            return bookings.find(id()).orElseThrow();
        }

        private MockHttpServletRequestBuilder move(String slot) {
            return post("/bookings/" + id() + "/move")
                    .param("formToken", UUID.randomUUID().toString())
                    .param("version", String.valueOf(now().version()))
                    .param("reason", "gripper broke")
                    .param("keepsAttendant", "true")
                    .param("slot", slot);
        }

        private String words(MockHttpServletRequestBuilder request) {
            MockHttpServletResponse answer = send(request, adaeze());
            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(now().state()).isEqualTo(BookingState.BOOKED);
            return document(answer).text();
        }

        @Test
        void movesABookingToAChosenFreeSlotAndCountsNobody() {
            int ahead = desk.quotaOf(noor().id()).ahead();
            Document page = page(get("/bookings/" + id() + "/move"), adaeze());
            String slot = avocet + " " + FRIDAY_TEN;
            assertThat(page(get("/bookings/" + id()), adaeze()).select("a[href$=/move]"))
                    .isNotEmpty();
            assertThat(page(get("/bookings/" + id()), noor()).select("a[href$=/move]"))
                    .isEmpty();
            assertThat(page.select("select[name=slot] option")).hasSizeGreaterThan(10);
            String location = location(send(move(slot), adaeze()));

            Booking moved = bookings.find(BookingId.of(location.substring("/bookings/".length())))
                    .orElseThrow();
            assertThat(moved.start()).isEqualTo(FRIDAY_TEN);
            assertThat(moved.operator()).isEqualTo(noor().id());
            assertThat(moved.attendant()).isEqualTo(mateo().id());
            assertThat(now().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
            assertThat(desk.quotaOf(noor().id()).ahead()).isEqualTo(ahead);
            assertThat(page(get(location), noor()).text())
                    .contains("moved here by staff, nothing counted: gripper broke");
            lab().booked(avocet, "2026-03-12T12:07:00Z", lab().student("Yuki Halfmoon"), null);
        }

        @Test
        void movesByHalfASlotThoughTheBookingItselfStandsThere() {
            CellId other = lab().cell(22);
            String location = location(send(move(other + " 2026-03-12T12:22:00Z"), adaeze()));
            assertThat(bookings.find(BookingId.of(location.substring("/bookings/".length()))))
                    .hasValueSatisfying(moved -> assertThat(moved.cell()).isEqualTo(other));
        }

        @Test
        void refusesAMoveWithTheRuleThatIsAgainstIt() {
            lab().booked(avocet, FRIDAY_TEN, lab().student("Yuki Halfmoon"), null);
            assertThat(words(move(avocet + " " + FRIDAY_TEN))).contains("somebody else has just booked this slot");
            lab().booked(lab().cell(7), "2026-03-13T11:07:00Z", mateo(), null);
            assertThat(words(move(avocet + " 2026-03-13T11:07:00Z"))).contains("Mateo Ironbark is booked elsewhere");
            assertThat(words(move(avocet + " 2026-03-13T11:08:00Z"))).contains("has no slot of 30 min that starts");
            assertThat(words(move(avocet + " 2026-03-14T11:07:00Z"))).contains("The lab is closed on Sat 14 Mar");
            assertThat(words(move(avocet + " 2026-03-10T11:07:00Z"))).contains("can no longer be booked");
            assertThat(words(move(avocet + " 2026-05-12T11:07:00Z"))).contains("14 days ahead");
            assertThat(words(move("somewhere"))).contains("Choose a slot from the list");
        }

        @Test
        void takesABookingOffTheCalendarWhenThereIsNoOtherSlot() {
            location(send(move(""), adaeze()));
            assertThat(now().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
            assertThat(desk.quotaOf(noor().id()).thisWeek()).isZero();
            assertThat(send(move(avocet + " " + FRIDAY_TEN), adaeze()).getStatus())
                    .isEqualTo(422);
        }

        private MockHttpServletRequestBuilder checkIn() {
            return post("/bookings/" + id() + "/check-in")
                    .param("formToken", UUID.randomUUID().toString());
        }

        @Test
        void checksInOnceAndNotAfterTheGraceTime() {
            clock.moveTo(now().start().minus(Duration.ofMinutes(10)));
            location(send(checkIn(), noor()));
            MockHttpServletResponse twice = send(checkIn(), noor());
            assertThat(twice.getStatus()).isEqualTo(422);
            assertThat(document(twice).text()).contains("checked in already");
            clock.moveBy(Duration.ofMinutes(20));
            assertThat(now().state()).isEqualTo(BookingState.BOOKED);
        }

        @Test
        void isFreedForOthersWhenNobodyCheckedInInTime() {
            clock.moveTo(now().start().plus(Duration.ofMinutes(6)));
            MockHttpServletResponse late = send(checkIn(), noor());
            assertThat(late.getStatus()).isEqualTo(422);
            assertThat(document(late).text()).contains("missed");
            assertThat(now().state()).isEqualTo(BookingState.MISSED);
            assertThat(desk.quotaOf(noor().id()).thisWeek()).isEqualTo(1);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
