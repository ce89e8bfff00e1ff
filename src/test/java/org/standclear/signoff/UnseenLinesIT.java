package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.Semaphore;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.util.ReflectionTestUtils;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Nobody confirms to have read lines that the page did not show: it shows all of them, whole, or asks nothing. */
class UnseenLinesIT {

    private static final String BLOCKS = """
            ; declaration
            ; power: reduced
            ; override-percent: 50
            ; max-tool-speed-mm-s: 200
            ; tool: G-02
            ; part-kg: 0.06
            ; loop: 1
            ; end declaration
            (posture elbow right)
            G17 G21 G90
            N10 G1 X-120 Y220 Z80 F3000
            %sN30 G1 Z60 F3000
            M30
            """;

    private static final String UNREAD = "N20 S900 M3\n";

    /** Larger than what is checked without waiting for a turn. */
    private static final String LARGE = "; nothing but room for a large file\n".repeat(8_000);

    abstract static class Cases extends WaiverCases {

        private void attach(String blocks) {
            attach("peg.txt", blocks);
        }

        private MockHttpServletResponse send(AbstractMockHttpServletRequestBuilder<?> request) throws Exception {
            return send(request, scene().lab.person("Ines Quarryvale", Role.INSTRUCTOR));
        }

        private Document page() throws Exception {
            return page(path(), scene().lab.person("Ines Quarryvale", Role.INSTRUCTOR));
        }

        private MockHttpServletResponse ticked(Document form, String shown) throws Exception {
            return send(post(path())
                    .param(
                            "formToken",
                            form.select("main input[name=formToken]").val())
                    .param("answer", answer().id().toString())
                    .param("shown", shown)
                    .param("reason", "The clamp is driven by hand here; watched by me.")
                    .param("linesRead", "true")
                    .param("sentence", Waiver.LINES_READ)
                    .param("expires", form.select("input[name=expires]").val()));
        }

        /** Every place in the queue for a check is taken meanwhile. */
        private Semaphore places() throws Exception {
            Object turns = application.getBean(Class.forName("org.standclear.check.CheckTurns"));
            return (Semaphore) Objects.requireNonNull(ReflectionTestUtils.getField(turns, "waiting"));
        }

        @Test
        void areNotWaivedWhileTheCheckIsBusy() throws Exception {
            attach(LARGE + BLOCKS.formatted(UNREAD));
            Document before = page();
            String seen = before.select("input[name=shown]").val();
            assertThat(seen).isNotEmpty();

            Semaphore places = places();
            int taken = places.drainPermits();
            try {
                Document busy = page();
                assertThat(busy.select("input[name=linesRead], input[name=shown], form[action$=waiver] button"))
                        .isEmpty();
                assertThat(busy.select("#linesRead").text())
                        .contains("cannot be shown just now", "Try again in half a minute");
                MockHttpServletResponse refused = ticked(busy, seen);
                assertThat(refused.getStatus()).isEqualTo(422);
                assertThat(Jsoup.parse(refused.getContentAsString())
                                .select(".errors")
                                .text())
                        .contains("Try again in half a minute");
            } finally {
                places.release(taken);
            }
            assertThat(waivers.of(scene().booking)).isEmpty();
            assertThat(ticked(page(), seen).getStatus()).isEqualTo(302);
            assertThat(waivers.of(scene().booking)).hasSize(1);
        }

        @Test
        void areNotConfirmedFromAPageThatShowedNone() throws Exception {
            attach(BLOCKS.formatted(UNREAD));
            MockHttpServletResponse refused = ticked(page(), "");
            assertThat(refused.getStatus()).isEqualTo(422);
            Document again = Jsoup.parse(refused.getContentAsString());
            assertThat(again.select("#linesRead-error").text()).contains("had not shown these lines");
            assertThat(again.select("#linesRead").hasAttr("checked")).isFalse();
            assertThat(waivers.of(scene().booking)).isEmpty();
        }

        @Test
        void areAllShownHoweverMany() throws Exception {
            String many = IntStream.rangeClosed(1, 230)
                    .mapToObj(number -> "N20 S" + number + " M3\n")
                    .collect(Collectors.joining());
            attach(BLOCKS.formatted(many));
            List<String> shown = page().select("ol[data-look=lines] li").eachText();
            assertThat(shown).hasSize(230).endsWith("line 241 N20 S230 M3");
        }

        @Test
        void areShownToTheirEnd() throws Exception {
            String end = "S900 M3";
            attach(BLOCKS.formatted("N20 (" + "x".repeat(700) + ") " + end + "\n"));
            assertThat(page().select("ol[data-look=lines] li").eachText())
                    .singleElement()
                    .satisfies(line -> assertThat(line).hasSizeGreaterThan(700).endsWith(end));
        }

        @Test
        void hideNothingBehindTurnedLettersOrAnEmptyStretch() throws Exception {
            attach(BLOCKS.formatted("N20" + " ".repeat(300) + "(\u202E03) S900 M3\n"));
            assertThat(page().select("ol[data-look=lines] li").eachText())
                    .singleElement()
                    .satisfies(line -> assertThat(line).contains("N20<300 blanks>(<U+202E>03) S900 M3"));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
