package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** What people read claims nothing the program cannot know, blames nobody and borrows no other trade's words. */
class WordsTests {

    /** Never, wherever people may read it. */
    private static final String NEVER = "certified|certification|compliant|approved programs?|dead-?man|enabling device"
            + "|violations?|offenders?|waypoints?|kiosk|zero harm|days since|work orders?|safe to (?:run|enter|start)"
            + "|(?:is|are|now|made) safe|teach (?:mode|pendant)|manual mode";

    /** Words with an innocent meaning inside code, but not on a page. */
    private static final String NOT_ON_PAGES = "permits?|tickets?|recipes?|jobs?|strikes?|t1|t2";

    private static final Pattern IN_CODE = words(NEVER);
    private static final Pattern ON_PAGES = words(NEVER + "|" + NOT_ON_PAGES);
    private static final Pattern STRING = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
    private static final Set<String> READ_ATTRIBUTES = Set.of(
            "alt",
            "title",
            "placeholder",
            "aria-label",
            "value",
            "content",
            "label",
            "text",
            "with",
            "replace",
            "attr");

    private static Pattern words(String alternatives) {
        return Pattern.compile("(?<![\\w-])(?:" + alternatives + ")(?![\\w-])", Pattern.CASE_INSENSITIVE);
    }

    private static Stream<String> onPage(String html) {
        List<String> read = new ArrayList<>();
        for (Element element : Jsoup.parse(html).getAllElements()) {
            read.add(element.ownText());
            for (Attribute attribute : element.attributes()) {
                if (READ_ATTRIBUTES.contains(attribute.getKey().replaceFirst("^th:", ""))) {
                    read.add(attribute.getValue());
                }
            }
        }
        return read.stream().flatMap(text -> found(ON_PAGES, text));
    }

    private static Stream<String> inStrings(String java) {
        return STRING.matcher(java).results().flatMap(literal -> found(IN_CODE, literal.group(1)));
    }

    private static Stream<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(MatchResult::group);
    }

    @Test
    void pagesUseTheWordsOfTheLab() {
        assertThat(TextFile.below("src/main/resources/templates", ".html").stream()
                        .flatMap(file -> onPage(file.text()).map(word -> file.path() + ": " + word)))
                .isEmpty();
        assertThat(Stream.of(".properties", ".csv", ".yml", ".yaml")
                        .flatMap(ending -> Stream.concat(
                                TextFile.below("seed-data", ending).stream(),
                                TextFile.below("src/main/resources", ending).stream()))
                        .flatMap(file -> found(IN_CODE, file.text()).map(word -> file.path() + ": " + word)))
                .isEmpty();
    }

    @Test
    void messagesUseTheWordsOfTheLab() {
        assertThat(TextFile.below("src/main/java", ".java").stream()
                        .flatMap(file -> inStrings(file.text()).map(word -> file.path() + ": " + word)))
                .isEmpty();
    }

    @Test
    void catchesThemInAnyPartOfAPage() {
        assertThat(onPage("<p>This cell is safe.</p>")).containsExactly("is safe");
        assertThat(onPage("<img alt='Certified'><p th:text=\"|${n} violations|\">x</p>"))
                .containsExactly("Certified", "violations");
        assertThat(onPage("<p>Print the ticket at the kiosk</p>")).containsExactly("ticket", "kiosk");
        assertThat(onPage("<p class=\"ticket\">A release does not make a run safe; it is permitted.</p>"))
                .isEmpty();
    }

    @Test
    void catchesThemInMessages() {
        assertThat(inStrings("say(\"a waypoint is \\\"compliant\\\"\"); // certified"))
                .containsExactly("waypoint", "compliant");
        assertThat(inStrings("catch (ConstraintViolationException e) { log(\"held\"); }"))
                .isEmpty();
        assertThat(TextFile.read(Path.of("pom.xml")).text()).isNotEmpty();
    }
}
