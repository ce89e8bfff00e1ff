package org.standclear.report.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Questions to own records as instructors answer them; tests share the page and look at their own question. */
class QuestionPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        private static MockHttpServletRequestBuilder filled(String path) {
            return post(path).param("formToken", UUID.randomUUID().toString());
        }

        @Test
        void keepsAnAnswerThatWasTooLongAtItsQuestion() throws Exception {
            Person ines = person(Role.INSTRUCTOR);
            Person noor = new SampleLab(application).student("Noor Candlewick");
            String words = "Was it so, " + UUID.randomUUID() + "?";
            String line = document(send(get("/me/record"), noor))
                    .select("select[name=about] option[value]:not([value=''])")
                    .val();
            location(send(filled("/me/record").param("about", line).param("words", words), noor));
            Document page = document(send(get("/report/questions"), ines));
            assertThat(page.select("h1").text()).matches("One question waits for an answer|[0-9]+ questions wait .*");
            String action = card(page, words).select("form").attr("action");

            MockHttpServletResponse refused = send(filled(action).param("words", "x".repeat(801)), ines);

            assertThat(refused.getStatus()).isEqualTo(422);
            Document again = document(refused);
            Element field = card(again, words).selectFirst("textarea");
            assertThat(Objects.requireNonNull(field).text()).isEqualTo("x".repeat(801));
            assertThat(again.select(".errors a").attr("href")).isEqualTo("#" + field.id());
            assertThat(again.select("textarea").eachText()).containsExactly("x".repeat(801));

            location(send(filled(action).param("words", "It was."), ines));
            assertThat(card(document(send(get("/report/questions"), ines)), words)
                            .text())
                    .contains("answered", "It was.");
        }

        private static Element card(Document page, String words) {
            return page.select("article").stream()
                    .filter(one -> one.text().contains(words))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
