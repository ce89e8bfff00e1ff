package org.standclear.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.web.SiteWalk;
import org.standclear.testing.web.WebUser;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Every drawing on the demo's pages is well-formed XML, so that it can be taken out of its page as it is. */
@DemoOnH2
class DrawingsParseIT {

    private static final Pattern EDGE = Pattern.compile("<svg\\b[^>]*>|</svg>");

    @LocalServerPort
    int port;

    @ParameterizedTest
    @CsvSource({"noor, 20", "ines, 20", "rosalind, 5"})
    void onEveryPage(String login, int fewest) {
        WebUser person = WebUser.atPort(port).signIn(login, DemoCollege.password());
        int parsed = 0;
        List<String> kinds = new ArrayList<>();
        for (String path : SiteWalk.from("/", person).pages().values()) {
            for (String drawing : drawings(person.get(path).html())) {
                assertThat(fault(drawing)).as(path).isEmpty();
                parsed++;
                kinds.add(drawing.replaceAll("(?s).*?data-drawing=\"(\\w+).*", "$1"));
            }
        }
        assertThat(parsed).as("drawings that %s sees", login).isGreaterThanOrEqualTo(fewest);
        if (!login.equals("rosalind")) {
            assertThat(kinds).contains("plan", "side", "speed", "axes", "frame");
        }
    }

    /** As they stand in the page; one may hold others. */
    private static List<String> drawings(String html) {
        List<String> drawings = new ArrayList<>();
        int open = 0;
        int from = 0;
        Matcher edge = EDGE.matcher(html);
        while (edge.find()) {
            if (edge.group().startsWith("</")) {
                open--;
            } else {
                from = open == 0 ? edge.start() : from;
                open += edge.group().endsWith("/>") ? 0 : 1;
            }
            if (open == 0) {
                drawings.add(html.substring(from, edge.end()));
            }
        }
        return drawings;
    }

    @Test
    void catchesOneThatIsNot() {
        assertThat(fault("<svg viewBox=\"0 0 1 1\"><path d=\"M0 0\"></svg>")).isNotEmpty();
        assertThat(fault("<svg><text>a&nbsp;b</text></svg>")).isNotEmpty();
        assertThat(fault("<svg><text>a &amp; b</text></svg>")).isEmpty();
    }

    private static String fault(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            builder.parse(new InputSource(new StringReader(svg)));
            return "";
        } catch (SAXException broken) {
            return String.valueOf(broken.getMessage());
        } catch (IOException | ParserConfigurationException e) {
            throw new AssertionError(e);
        }
    }
}
