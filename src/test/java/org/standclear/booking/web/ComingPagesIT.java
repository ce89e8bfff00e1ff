package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.booking.Confirmations;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.PageCases;

/** "I am coming": one button where the lab's rules ask for it. It is Wed 11 March 2026, 09:00 UTC. */
@OnH2
class ComingPagesIT extends PageCases {

    @Autowired
    ApplicationContext application;

    @Autowired
    BookingNumbers numbers;

    @Autowired
    Confirmations confirmations;

    @AfterEach
    void nobodyIsAsked() {
        numbers.change(BookingSettings.DEFAULTS, PersonId.next(), "as it was");
    }

    private MockHttpServletResponse say(String path, Person by) {
        return send(post(path).param("formToken", UUID.randomUUID().toString()), by);
    }

    @Test
    void theOperatorSaysSoOnceAndOpeningThePageSaysNothing() {
        SampleLab lab = new SampleLab(application);
        Person noor = lab.student("Noor Candlewick");
        Person mateo = lab.student("Mateo Ironbark");
        Booking booking = lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", noor, mateo);
        String path = "/bookings/" + booking.id() + "/coming";
        assertThat(page(get("/me"), noor).select("form[action=" + path + "]")).isEmpty();
        assertThat(page(get(path), noor).select("h1").text()).contains("nobody asks whether you come");
        numbers.change(new BookingSettings(30, 14, 2, 4, 6, 24, 120, 10, 6, 10, 60), PersonId.next(), "for this test");

        assertThat(page(get("/me"), noor).select("form[action=" + path + "]").text())
                .isEqualTo("I am coming");
        assertThat(page(get("/me"), mateo).select("form[action=" + path + "]")).isEmpty();
        assertThat(page(get("/bookings/" + booking.id()), noor).select("form[action=" + path + "]"))
                .hasSize(1);
        assertThat(page(get(path), noor).select("h1").text()).isEqualTo("Are you coming?");
        assertThat(confirmations.confirmedAt(booking.id())).isEmpty();
        assertThat(send(get(path), mateo).getStatus()).isEqualTo(404);
        assertThat(say(path, mateo).getStatus()).isEqualTo(404);

        assertThat(location(say(path, noor))).isEqualTo("/bookings/" + booking.id());
        assertThat(confirmations.confirmedAt(booking.id())).isPresent();
        assertThat(page(get("/me"), noor).select("form[action=" + path + "]")).isEmpty();
        assertThat(say(path, noor).getStatus()).as("once").isEqualTo(422);
        assertThat(page(get(path), noor).select("h1").text()).startsWith("You said on");
    }
}
