package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.incident.IncidentCases;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.web.Accounts;

/** What tests of the pages of incidents share. */
abstract class IncidentPageCases extends IncidentCases {

    @Autowired
    MockMvc mvc;

    MockHttpServletResponse send(Person who, AbstractMockHttpServletRequestBuilder<?> request) throws Exception {
        return mvc.perform(request.with(Accounts.as(who)).with(csrf()))
                .andReturn()
                .getResponse();
    }

    MockHttpServletResponse submit(Person who, String path, Map<String, String> fields) throws Exception {
        var request = post(path).param("formToken", UUID.randomUUID().toString());
        fields.forEach(request::param);
        return send(who, request);
    }

    Document see(Person who, String path) throws Exception {
        MockHttpServletResponse response = send(who, get(path));
        assertThat(response.getStatus()).as(path).isEqualTo(200);
        return page(response);
    }

    int statusOf(Person who, String path) throws Exception {
        return send(who, get(path)).getStatus();
    }

    Document page(MockHttpServletResponse response) throws Exception {
        return Jsoup.parse(response.getContentAsString());
    }

    /** Where a form led that was taken. */
    String led(MockHttpServletResponse response) throws Exception {
        assertThat(response.getStatus()).as(page(response).text()).isEqualTo(302);
        return String.valueOf(response.getRedirectedUrl());
    }

    /** What a form says that was refused; it comes back with 422. */
    String refusal(MockHttpServletResponse response) throws Exception {
        assertThat(response.getStatus()).isEqualTo(422);
        return page(response).select(".errors").text();
    }

    static String at(IncidentId id) {
        return "/incidents/" + id;
    }

    /** The fields of a near miss that names its reporter or not. */
    Map<String, String> nearMiss(String signed) {
        Map<String, String> fields = new HashMap<>();
        fields.put("cell", scene().cell.toString());
        fields.put("kind", "near-miss");
        fields.put("sentence", "A hand was in the cell <b>while</b> it waited.");
        fields.put("signed", signed);
        return fields;
    }
}
