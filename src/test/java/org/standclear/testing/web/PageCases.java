package org.standclear.testing.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.io.UnsupportedEncodingException;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;

/** What tests of pages share: people, their requests, and the pages that come back. */
public abstract class PageCases {

    @Autowired
    protected MockMvc mvc;

    @Autowired
    protected PeopleRegister people;

    /** A new person with the role. */
    protected Person person(Role role) {
        return Accounts.add(people, "Hemi Coppergate " + role.words(), role);
    }

    /** The answer to a request of the person. */
    protected MockHttpServletResponse send(AbstractMockHttpServletRequestBuilder<?> request, Person by) {
        try {
            return mvc.perform(request.with(csrf()).with(Accounts.as(by)))
                    .andReturn()
                    .getResponse();
        } catch (Exception e) {
            throw new AssertionError("the request failed", e);
        }
    }

    /** The page that the person gets; fails unless it is there. */
    protected Document page(AbstractMockHttpServletRequestBuilder<?> request, Person by) {
        MockHttpServletResponse response = send(request, by);
        assertThat(response.getStatus()).isEqualTo(200);
        return document(response);
    }

    /** The page in an answer. */
    protected static Document document(MockHttpServletResponse response) {
        try {
            return Jsoup.parse(response.getContentAsString());
        } catch (UnsupportedEncodingException e) {
            throw new AssertionError(e);
        }
    }

    /** Where a redirect points; fails when it is none. */
    protected static String location(MockHttpServletResponse response) {
        assertThat(response.getStatus()).isEqualTo(302);
        return String.valueOf(response.getRedirectedUrl());
    }

    /** The token of the first form of the page itself. */
    protected static String token(Document page) {
        return page.select("main input[name=formToken]").val();
    }
}
