package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.people.Person;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.PageCases;
import org.standclear.trail.TrailReader;

/** The facts of the lab: changed with a reason, refused when out of date. */
@OnH2
class LabPagesIT extends PageCases {

    @Autowired
    Labs labs;

    @Autowired
    TrailReader trail;

    private @Nullable Lab before;

    @BeforeEach
    void asItWas() {
        before = labs.theLab();
    }

    @AfterEach
    void back() {
        labs.change(java.util.Objects.requireNonNull(before));
    }

    private MockHttpServletResponse change(Person by, String seen, String number, String reason) {
        return send(
                post("/lab")
                        .param("formToken", UUID.randomUUID().toString())
                        .param("seen", seen)
                        .param("name", "Robot lab")
                        .param("room", "Room 114")
                        .param("emergencyNumber", number)
                        .param("firstAider", "Hemi Coppergate, room 115")
                        .param("stopMap", "One on each bench")
                        .param("reason", reason),
                by);
    }

    /** Two send at the same moment what both filled in against the same facts: one is told, and sees what the other wrote. */
    @Test
    void oneOfTwoAtOnceIsShownWhatTheOtherWrote() throws Exception {
        Person marit = person(Role.ADMINISTRATOR);
        Person ines = person(Role.INSTRUCTOR);
        String seen = page(get("/lab"), marit).select("input[name=seen]").val();
        var together = new java.util.concurrent.CyclicBarrier(2);
        var people = java.util.concurrent.Executors.newFixedThreadPool(2);
        try {
            var first = people.submit(() -> {
                together.await();
                return change(marit, seen, "551", "one switchboard");
            });
            var second = people.submit(() -> {
                together.await();
                return change(ines, seen, "552", "the other switchboard");
            });
            var answers = java.util.List.of(first.get(), second.get());

            assertThat(answers).extracting(MockHttpServletResponse::getStatus).containsExactlyInAnyOrder(302, 409);
            MockHttpServletResponse told = answers.stream()
                    .filter(one -> one.getStatus() == 409)
                    .findFirst()
                    .orElseThrow();
            assertThat(document(told).text()).contains("551", "552");
        } finally {
            people.shutdown();
        }
    }

    @Test
    void putsUpOtherFactsWithAReason() {
        Person marit = person(Role.ADMINISTRATOR);
        Document page = page(get("/lab"), marit);
        String seen = page.select("input[name=seen]").val();

        assertThat(change(marit, seen, " ", "").getStatus()).isEqualTo(422);
        assertThat(location(change(marit, seen, "555", "the switchboard changed")))
                .isEqualTo("/lab");
        assertThat(labs.theLab().emergencyNumber()).isEqualTo("555");
        assertThat(page(get("/lab"), marit).select("h1").text()).isEqualTo("The facts that hang at every bench");
        assertThat(trail.about(labs.theLab().id(), labs.theLab().id().toString()))
                .anyMatch(entry -> entry.words().contains("the switchboard changed"));
        assertThat(change(marit, seen, "556", "again").getStatus())
                .as("out of date")
                .isEqualTo(409);
        assertThat(labs.theLab().emergencyNumber()).isEqualTo("555");
    }
}
