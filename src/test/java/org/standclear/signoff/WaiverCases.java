package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.people.Person;
import org.standclear.testing.web.Accounts;

/** What tests of waivers share beside the bench: the door, and the pages as somebody sees them. */
abstract class WaiverCases extends BenchCases {

    @Autowired
    protected Waivers waivers;

    @Autowired
    private MockMvc mvc;

    MockHttpServletResponse send(AbstractMockHttpServletRequestBuilder<?> request, Person by) throws Exception {
        return mvc.perform(request.with(Accounts.as(by)).with(csrf()))
                .andReturn()
                .getResponse();
    }

    Document page(String path, Person by) throws Exception {
        MockHttpServletResponse response = send(get(path), by);
        assertThat(response.getStatus()).as(path).isEqualTo(200);
        return Jsoup.parse(response.getContentAsString());
    }

    /** Where a waiver of the booking is given and taken back. */
    String path() {
        return "/bookings/" + scene().booking + "/waiver";
    }
}
