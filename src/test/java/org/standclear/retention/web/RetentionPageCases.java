package org.standclear.retention.web;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.web.PageCases;

/** What tests of the pages of keeping and disposing share: the people, and a form that asks once more. */
abstract class RetentionPageCases extends PageCases {

    Person marit;
    Person ines;
    Person noor;

    @BeforeEach
    void people() {
        marit = person(Role.ADMINISTRATOR);
        ines = person(Role.INSTRUCTOR);
        noor = person(Role.STUDENT);
    }

    MockHttpServletResponse submit(Person by, String address, Document form, Map<String, String> fields) {
        MockHttpServletRequestBuilder request = post(address).param("formToken", token(form));
        fields.forEach(request::param);
        return send(request, by);
    }

    Map<String, String> hidden(Document page) {
        Map<String, String> fields = new LinkedHashMap<>();
        page.select("main form input[type=hidden]:not([name=_csrf]):not([name=formToken])")
                .forEach(input -> fields.put(input.attr("name"), input.val()));
        return fields;
    }
}
