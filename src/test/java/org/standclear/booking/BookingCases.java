package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.cell.CellStates;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.MovableClock;
import org.standclear.trail.TrailReader;

/** What tests of the booking desk share: a lab of their own and the doors. The clock stands at Wed 11 March, 09:00 UTC. */
abstract class BookingCases {

    static final String THURSDAY_NOON = "2026-03-12T12:07:00Z";

    @Autowired
    ApplicationContext application;

    @Autowired
    BookingDesk desk;

    @Autowired
    Bookings bookings;

    @Autowired
    BookingNumbers numbers;

    @Autowired
    OpeningHours hours;

    @Autowired
    CellStates states;

    @Autowired
    MovableClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TrailReader trail;

    @Autowired
    Labs labs;

    private @Nullable SampleLab lab;
    CellId avocet = CellId.next();

    @BeforeEach
    void aLab() {
        lab = new SampleLab(application);
        avocet = lab().cell(7);
    }

    SampleLab lab() {
        assertThat(lab).isNotNull();
        return java.util.Objects.requireNonNull(lab);
    }

    static Outcome.Refused refused(Outcome outcome) {
        assertThat(outcome).isInstanceOf(Outcome.Refused.class);
        return (Outcome.Refused) outcome;
    }

    long claims(Booking booking) {
        return jdbc.sql("select count(*) from booking_claims where booking_id = ?")
                .param(booking.id().value())
                .query(Long.class)
                .single();
    }

    String rule(Person operator, String start) {
        return refused(lab().book(avocet, start, operator)).rule();
    }
}
