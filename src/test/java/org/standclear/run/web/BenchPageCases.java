package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.io.UnsupportedEncodingException;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.people.Person;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.run.Runs;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.Part;

/** What tests of the bench pages share: people who look at pages and send their forms. */
abstract class BenchPageCases extends BenchCases {

    @Autowired
    MockMvc mvc;

    @Autowired
    Runs runs;

    SignedInPerson signedIn(Person person) {
        return new SignedInPerson(person.id(), person.login(), person.printedName(), person.roles(), null);
    }

    Document see(Person who) throws Exception {
        return see(who, "/bench/" + scene().cell);
    }

    Document see(Person who, String path) throws Exception {
        MockHttpServletResponse response = send(who, get(path));
        assertThat(response.getStatus()).isEqualTo(200);
        return page(response);
    }

    Document page(MockHttpServletResponse response) throws UnsupportedEncodingException {
        return Jsoup.parse(response.getContentAsString());
    }

    MockHttpServletResponse send(Person who, MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request.with(user(signedIn(who))).with(csrf()))
                .andReturn()
                .getResponse();
    }

    /** Sends the form that ends in that path, with the hidden fields it has. */
    MockHttpServletResponse submit(Person who, Document page, String ending, Map<String, String> values)
            throws Exception {
        var forms = page.select("form[action$=" + ending + "]");
        assertThat(forms).as(() -> "form " + ending + " on " + page.text()).hasSize(1);
        Element form = forms.get(0);
        MockHttpServletRequestBuilder request = post(form.attr("action"));
        for (Element hidden : form.select("input[type=hidden]")) {
            if (!hidden.attr("name").equals("_csrf")) {
                request.param(hidden.attr("name"), hidden.attr("value"));
            }
        }
        values.forEach((name, value) -> request.param(name, value));
        return send(who, request);
    }

    void accepted(MockHttpServletResponse response) throws Exception {
        assertThat(response.getStatus()).as(page(response).text()).isEqualTo(302);
    }

    void answerAll(Person account, Part part, Person signer) throws Exception {
        for (Map<String, String> values : scene().good(part, signer.id()).values()) {
            accepted(submit(account, see(account), "/answers", values));
        }
    }
}
