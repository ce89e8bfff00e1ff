package org.standclear.platform.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The markup of strips, read through a parser: signs of the states, addresses, and that no word becomes an element. */
class StripMarkupTests {

    private static final String HOSTILE = "\"'><img src=x onerror=alert(1)>&amp;</text></svg><script>x</script>";

    private static StripBlock block(String words, String state) {
        return new StripBlock("10.000%", "90.000%", words, words, words, state, words, "/bookings/7?a=1&b=2", false);
    }

    private static Document page(Strip strip, String contextPath) {
        return Jsoup.parseBodyFragment("<figure>" + StripMarkup.of(strip, contextPath) + "</figure>");
    }

    private static Strip strip(StripBlock... blocks) {
        return new Strip("c1", "Avocet", List.of(new HourMark("5.000%", "09")), List.of(blocks), "50.000%");
    }

    @Test
    void neverMakesAnElementOfWords() {
        List<StripBlock> blocks = List.of(block(HOSTILE, HOSTILE));
        Document page =
                page(new Strip(HOSTILE, HOSTILE, List.of(new HourMark("5.000%", HOSTILE)), blocks, null), "/\"><b>");

        assertThat(page.select("img, script, b")).isEmpty();
        assertThat(page.getAllElements().stream().flatMap(StripMarkupTests::attributeNames))
                .noneMatch(name -> name.startsWith("on"));
        assertThat(page.select("td").eachText()).contains(HOSTILE);
        assertThat(page.select("svg title").text()).contains(HOSTILE);
        assertThat(page.select("a[data-state]").attr("data-state")).isEqualTo(HOSTILE);
    }

    private static Stream<String> attributeNames(Element element) {
        return element.attributes().asList().stream().map(attribute -> attribute.getKey());
    }

    @ParameterizedTest
    @CsvSource({
        "free, 0, 0",
        "booked, 0, 0",
        "taken, 0, 0",
        "checked, 1, 0",
        "ready, 1, 0",
        "released, 1, 0",
        "running, 0, 0",
        "stopped, 2, 0",
        "finished, 1, 0",
        "closed-out, 1, 0",
        "missed, 0, 1",
        "cancelled, 0, 1",
        "late-cancelled, 0, 1",
        "moved, 0, 1",
        "closed, 0, 0",
        "out-of-service, 0, 0"
    })
    void givesStatesASignBesideTheirColour(String state, int bars, int strokes) {
        Document page = page(strip(block("Noor", state)), "");

        assertThat(page.select("rect.bar")).hasSize(bars);
        assertThat(page.select("line.struck")).hasSize(strokes);
    }

    @Test
    void leadsWhereTheApplicationStands() {
        assertThat(page(strip(block("Noor", "booked")), "/robots").select("a").eachAttr("href"))
                .containsExactly("/robots/bookings/7?a=1&b=2", "/robots/bookings/7?a=1&b=2");
        StripBlock loose = new StripBlock("10.000%", "5.000%", "09:00", "closed", "", "closed", "closed", null, true);
        Document page = page(strip(loose), "");
        assertThat(page.select("a[href]")).isEmpty();
        assertThat(page.select("a.mine")).hasSize(1);
        assertThat(page.select("td a")).isEmpty();
    }

    @Test
    void hidesAnHourUnderTheWordForThisMoment() {
        Strip strip = new Strip(
                "c1",
                "Avocet",
                List.of(new HourMark("10.000%", "09"), new HourMark("49.000%", "13")),
                List.of(),
                "50.000%");

        assertThat(page(strip, "").select("text.hour").eachText()).containsExactly("09");
        assertThat(page(strip, "").select("text.now-word").text()).isEqualTo("now");
    }
}
