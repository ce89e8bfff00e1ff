package org.standclear.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.Accounts;

/** Every page tells the browser what it may load and who may frame it (W3C Content Security Policy Level 3). */
@OnH2
class PageHeadersIT {

    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
            + "font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    @Autowired
    MockMvc mvc;

    @Autowired
    PeopleRegister people;

    private static void isStrict(MockHttpServletResponse page) {
        assertThat(page.getHeaders("Content-Security-Policy")).containsExactly(POLICY);
        assertThat(page.getHeader("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(page.getHeader("X-Frame-Options")).isEqualTo("DENY");
        assertThat(page.getHeader("Referrer-Policy")).isEqualTo("same-origin");
        assertThat(page.getHeader("Permissions-Policy")).isEqualTo("camera=(), microphone=(), geolocation=()");
        assertThat(page.getHeader("Cross-Origin-Opener-Policy")).isEqualTo("same-origin");
        assertThat(page.getHeader("Cross-Origin-Resource-Policy")).isEqualTo("same-origin");
        assertThat(page.getHeader("Cache-Control")).contains("no-store");
    }

    private MockHttpServletResponse page(String path, Person by) throws Exception {
        return mvc.perform(get(path).with(Accounts.as(by))).andReturn().getResponse();
    }

    private Person student() {
        Outcome added = people.add(new NewPerson(
                "h" + UUID.randomUUID(),
                "Noor Candlewick",
                Set.of(Role.STUDENT),
                new Password.Chosen("four beaks on a quiet pier"),
                null));
        return ((Outcome.Done) added).person();
    }

    @Test
    void theSignInPageIsStrict() throws Exception {
        MockHttpServletResponse page = mvc.perform(get("/sign-in")).andReturn().getResponse();

        assertThat(page.getStatus()).isEqualTo(200);
        isStrict(page);
    }

    @Test
    void todayIsStrict() throws Exception {
        MockHttpServletResponse page = page("/today", student());

        assertThat(page.getStatus()).isEqualTo(200);
        assertThat(page.getContentAsString()).contains("<main");
        isStrict(page);
    }

    @Test
    void pagesThatSayNoAreStrict() throws Exception {
        Person noor = student();
        MockHttpServletResponse refused = page("/lab", noor);
        MockHttpServletResponse missing = page("/checks/" + UUID.randomUUID(), noor);

        assertThat(refused.getStatus()).isEqualTo(403);
        isStrict(refused);
        assertThat(missing.getStatus()).isEqualTo(404);
        isStrict(missing);
    }
}
