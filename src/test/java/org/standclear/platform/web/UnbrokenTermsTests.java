package org.standclear.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;

/** Browsers may end a line at a hyphen; "e-" at the end of one and "stop" on the next is hard to read in a hurry. */
class UnbrokenTermsTests {

    private static final Pattern TERM = Pattern.compile("(?i)\\be-stop");

    @Test
    void everyPrintedEStopStaysOnOneLine() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src/main/resources/templates"))) {
            assertThat(files.filter(file -> file.toString().endsWith(".html"))
                            .flatMap(file -> breakable(read(file)).stream().map(text -> file + ": " + text)))
                    .isEmpty();
        }
    }

    @Test
    void findsAPlantedOne() {
        assertThat(breakable("<p>Press the e-stop.</p>")).containsExactly("Press the e-stop.");
        assertThat(breakable("<p>Press the <span class=\"nobr\">e-stop</span>.</p>"))
                .isEmpty();
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Text that is printed as it stands: what an expression replaces is an example for whoever reads the template. */
    private static List<String> breakable(String template) {
        return Jsoup.parse(template, Parser.xmlParser()).select("*").textNodes().stream()
                .filter(text -> TERM.matcher(text.text()).find())
                .filter(text -> !isKept(text))
                .map(TextNode::text)
                .map(String::strip)
                .toList();
    }

    private static boolean isKept(TextNode text) {
        Element parent = text.parent();
        return parent != null && (parent.hasClass("nobr") || parent.hasAttr("th:text"));
    }
}
