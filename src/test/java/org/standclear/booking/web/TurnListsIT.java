package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.SampleLab;
import org.standclear.booking.WaitingList;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.OnH2;
import org.standclear.testing.StatementCount;
import org.standclear.testing.web.PageCases;

/** The lists of who waits and of lost turns ask together for what their rows need. It is Wed 11 March 2026, 09:00 UTC. */
@OnH2
class TurnListsIT extends PageCases {

    @Autowired
    ApplicationContext application;

    @Autowired
    BookingDesk desk;

    @Autowired
    WaitingList waitingList;

    private @Nullable SampleLab lab;

    @BeforeEach
    void aLab() {
        lab = new SampleLab(application);
        lab().cell(7);
    }

    private SampleLab lab() {
        return Objects.requireNonNull(lab);
    }

    @Test
    void asksForManyWhoWaitAsForFew() throws Exception {
        Person adaeze = lab().technician("Adaeze Lanternby");
        List<Person> waiting = new ArrayList<>();
        try {
            IntStream.range(0, 3).forEach(number -> waiting.add(waits(number)));
            int few = statements("/book/waits", adaeze);
            IntStream.range(3, 15).forEach(number -> waiting.add(waits(number)));
            assertThat(page(get("/book/waits"), adaeze)
                            .select("section[aria-labelledby=all]")
                            .text())
                    .contains("Yuki Halfmoon 14");
            // settings and hours are sometimes remembered
            assertThat(statements("/book/waits", adaeze)).isBetween(few - 3, few + 3);
        } finally {
            // whoever waits is offered other tests' slots
            waiting.forEach(
                    person -> waitingList.of(person.id()).forEach(one -> waitingList.leave(one.id(), person.id())));
        }
    }

    private Person waits(int number) {
        Person person = lab().student("Yuki Halfmoon " + number);
        location(send(
                post("/book/waits")
                        .param("formToken", UUID.randomUUID().toString())
                        .param("cell", "")
                        .param("day", "2026-03-24")
                        .param("from", "12:00")
                        .param("until", "13:00")
                        .param("purpose", ""),
                person));
        return person;
    }

    @Test
    void asksForManyLostTurnsAsForOne() throws Exception {
        Person adaeze = lab().technician("Adaeze Lanternby");
        loses(lab().student("Noor Candlewick"), lab().cell(0));
        int one = statements("/book/lost", adaeze);
        for (int i = 0; i < 8; i++) {
            loses(lab().student("Noor Candlewick " + i), lab().cell(0));
        }
        assertThat(page(get("/book/lost"), adaeze).text()).contains("Noor Candlewick 7");
        assertThat(statements("/book/lost", adaeze)).isBetween(one - 3, one + 3);
    }

    private void loses(Person person, CellId cell) {
        Booking late = lab().booked(cell, "2026-03-11T10:00:00Z", person, null);
        desk.cancel(late.id(), person.id());
    }

    private int statements(String path, Person reader) throws Exception {
        return StatementCount.ofLooks(() -> page(get(path), reader));
    }
}
