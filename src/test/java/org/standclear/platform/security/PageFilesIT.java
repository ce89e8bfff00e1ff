package org.standclear.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.boot.webmvc.error.ErrorAttributes;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.web.context.request.ServletWebRequest;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.WebUser;

/** What a page needs beside itself, and what an error page says. */
@OnH2
class PageFilesIT {

    @LocalServerPort
    int port;

    @Autowired
    ErrorAttributes words;

    @Test
    void servesEveryStyleAndScriptThatAPageNames() {
        WebUser stranger = WebUser.atPort(port);
        Document page = stranger.get("/sign-in").document();
        List<String> files = page.select("link[rel=stylesheet], script[src], link[rel=icon]").stream()
                .map(file -> file.hasAttr("src") ? file.attr("src") : file.attr("href"))
                .toList();

        assertThat(files).hasSizeGreaterThan(5).anyMatch(file -> file.contains("htmx"));
        assertThat(files)
                .allSatisfy(
                        file -> assertThat(stranger.get(file).status()).as(file).isEqualTo(200));
    }

    @Test
    void leadsBackToTheBenchAndGivesTheTimeInTheLab() {
        String bench = "/bench/" + UUID.randomUUID();

        assertThat(attributes(bench + "/stop")).containsEntry("bench", bench).containsKey("at");
        assertThat(attributes("/bench/../people")).doesNotContainKey("bench");
        assertThat(String.valueOf(attributes("/today").get("at"))).matches("[A-Z][a-z]{2} \\d+ [A-Z].* \\d\\d:\\d\\d");
    }

    private java.util.Map<String, Object> attributes(String path) {
        MockHttpServletRequest request = new MockHttpServletRequest();
        request.setAttribute("jakarta.servlet.error.status_code", 500);
        request.setAttribute("jakarta.servlet.error.request_uri", path);
        return words.getErrorAttributes(
                new ServletWebRequest(request), org.springframework.boot.web.error.ErrorAttributeOptions.defaults());
    }
}
