package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.SampleLab;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.Windows;
import org.standclear.cell.Cells;
import org.standclear.people.Accommodations;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.web.PageCases;

/** A lab of one cell and two students, and a Friday whose slots are shared out. It is Wed 11 March 2026, 09:00 UTC. */
abstract class WindowCases extends PageCases {

    static final String FRIDAY_EIGHT = "2026-03-13T08:00:00Z";
    static final String FRIDAY_TEN = "2026-03-13T10:00:00Z";
    private static final Duration PATIENCE = Duration.ofMinutes(3);

    @Autowired
    ApplicationContext application;

    @Autowired
    Bookings bookings;

    @Autowired
    Windows windows;

    @Autowired
    Searches searches;

    @Autowired
    Plans plans;

    @Autowired
    Accommodations accommodations;

    @Autowired
    Cells cells;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MovableClock clock;

    @Nullable
    SampleLab lab;

    CellId avocet = CellId.next();
    Person ines = person();
    Person noor = person();
    Person mateo = person();

    static Person person() {
        return new Person(org.standclear.platform.ids.PersonId.next(), "", "", java.util.Set.of(), false);
    }

    @BeforeEach
    void aLab() {
        SampleLab made = new SampleLab(application);
        lab = made;
        avocet = made.cell(0);
        ines = made.person("Ines Quarryvale", Role.INSTRUCTOR);
        noor = student("Noor Candlewick");
        mateo = student("Mateo Ironbark");
    }

    /** Authorised on the test's own cell only, so that plans use no other test's. */
    Person student(String name) {
        Person student = Objects.requireNonNull(lab).person(name, Role.STUDENT);
        for (Duty duty : Duty.values()) {
            Objects.requireNonNull(lab)
                    .authorise(student.id(), duty, avocet, MovableClock.START.plus(Duration.ofDays(90)));
        }
        return student;
    }

    /** Other tests book single slots of that day: a window that is left open would refuse them. */
    @AfterEach
    void endsItsWindows() {
        jdbc.sql("""
                update booking_windows set closed_by = made_by, closed_at = made_at, closed_reason = 'the test is over'
                where made_by = ? and accepted_search is null and closed_at is null""").param(ines.id().value()).update();
    }

    static MockHttpServletRequestBuilder form(String path) {
        return post(path).param("formToken", UUID.randomUUID().toString());
    }

    UUID window() {
        String location = location(send(
                form("/windows")
                        .param("windowTitle", "Rush Friday")
                        .param("firstDay", "2026-03-13")
                        .param("lastDay", "2026-03-13")
                        .param("untilDay", "2026-03-12")
                        .param("untilTime", "12:00"),
                ines));
        return UUID.fromString(location.substring("/windows/".length()));
    }

    MockHttpServletRequestBuilder request(UUID window, int turns, String... times) {
        return form("/windows/" + window + "/request")
                .param("turns", String.valueOf(turns))
                .param("tool", cells.current(avocet).fittedTool())
                .param("can", times);
    }

    void bothAsk(UUID window) {
        location(send(request(window, 2, FRIDAY_EIGHT).param("partner", mateo.login()), noor));
        location(send(request(window, 2, FRIDAY_EIGHT, FRIDAY_TEN).param("partner", noor.login()), mateo));
    }

    UUID search(UUID window) {
        String location = location(send(form("/windows/" + window + "/searches"), ines));
        UUID search = UUID.fromString(location.substring("/searches/".length()));
        Instant until = Instant.now().plus(PATIENCE);
        while (searches.find(search).orElseThrow().endedAt() == null
                && Instant.now().isBefore(until)) {
            pause();
        }
        assertThat(searches.find(search).orElseThrow().says()).isEmpty();
        assertThat(searches.find(search).orElseThrow().state().hasPlan()).isTrue();
        return search;
    }

    static void pause() {
        try {
            Thread.sleep(50);
        } catch (InterruptedException interrupted) {
            throw new AssertionError(interrupted);
        }
    }

    List<Booking> ahead(Person person) {
        return bookings.of(person.id(), clock.instant());
    }

    String refused(MockHttpServletRequestBuilder request) {
        MockHttpServletResponse answer = send(request, noor);
        assertThat(answer.getStatus()).isEqualTo(422);
        return document(answer).text();
    }
}
