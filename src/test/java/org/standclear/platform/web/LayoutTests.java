package org.standclear.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.mockito.BDDMockito;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.SpringBootConfiguration;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.boot.webmvc.test.autoconfigure.WebMvcTest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.stereotype.Controller;
import org.springframework.test.context.bean.override.mockito.MockitoBean;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.forms.FormTokens;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.strip.Strip;
import org.standclear.platform.strip.StripBlock;
import org.standclear.platform.strip.StripDialect;
import org.standclear.platform.strip.StripScale;
import org.standclear.platform.time.LabTime;

/** What the layouts and their parts make of a page, read through a parser. */
@WebMvcTest
class LayoutTests {

    private static final Lab LAB = new Lab(
            LabId.of("00000000-0000-7000-8000-000000000001"),
            "Quillhaven Technical College",
            "Tern Hall room 114",
            "Tern Hall Robot Bench",
            ZoneId.of("UTC"),
            "555 0114",
            "Ines Quarryvale, room 112",
            "front edge of each bench");

    @MockitoBean(name = "labs")
    private Labs labs;

    @Autowired
    private MockMvc mvc;

    @BeforeEach
    void nameTheLab() {
        BDDMockito.given(labs.theLab()).willReturn(LAB);
    }

    private static SignedInPerson person(Role... roles) {
        return new SignedInPerson(
                PersonId.of("00000000-0000-7000-8000-000000000002"), "noor", "Noor <Candlewick>", Set.of(roles), null);
    }

    private Document page(String path, @Nullable SignedInPerson who) throws Exception {
        var request = get(path);
        return Jsoup.parse(mvc.perform(who == null ? request : request.with(user(who)))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private List<String> tabs(Role... roles) throws Exception {
        return page("/sample", person(roles)).select("nav.tabs a").eachText();
    }

    @Test
    void showsEachRoleItsTabs() throws Exception {
        assertThat(tabs(Role.STUDENT))
                .containsExactly("Today", "Book", "Check a program", "My page", "Runs", "Incidents", "Cells");
        assertThat(tabs(Role.TECHNICIAN))
                .containsExactly(
                        "Today",
                        "Book",
                        "Check a program",
                        "My page",
                        "Bench",
                        "Desk",
                        "Runs",
                        "Incidents",
                        "Cells",
                        "People",
                        "Record");
        assertThat(tabs(Role.INSTRUCTOR)).contains("Runs", "People", "Record", "Report");
        assertThat(tabs(Role.REVIEWER)).containsExactly("Reviews", "Runs", "Incidents", "Cells", "Record", "Report");
        assertThat(tabs(Role.ADMINISTRATOR)).containsExactly("Cells", "People", "Record");
        assertThat(tabs(Role.BENCH)).containsExactly("Bench");
    }

    @Test
    void marksTheCurrentTabAndNamesThePerson() throws Exception {
        Document page = page("/sample", person(Role.STUDENT));

        assertThat(page.select("nav.tabs a[aria-current=page]").eachText()).containsExactly("Book");
        assertThat(page.title()).isEqualTo("Sample · Standclear");
        assertThat(page.select(".whoami b").text()).isEqualTo("Noor <Candlewick>");
        assertThat(page.select("form[action=/sign-out][method=post] input[name=_csrf]"))
                .hasSize(1);
        assertThat(page.select("main")).hasSize(1);
        assertThat(page.select("footer").text()).contains("anyone can still press the e-stop");
    }

    @Test
    void keepsHelpOnTheBenchScreen() throws Exception {
        Document page = page("/sample/bench", person(Role.BENCH));

        assertThat(page.select("footer.help").text())
                .contains("555 0114", "Ines Quarryvale, room 112", "front edge of each bench", "never stops a robot");
        assertThat(page.select("nav.tabs")).isEmpty();
    }

    @Test
    void tiesErrorsToTheirFields() throws Exception {
        Document page = page("/sample", person(Role.STUDENT));

        assertThat(page.select(".errors a[href=#title]").text()).isEqualTo("Write a title.");
        assertThat(page.select(".errors h2").text()).contains("2 things");
        assertThat(page.select("#title").attr("aria-invalid")).isEqualTo("true");
        assertThat(page.select("#title").attr("aria-describedby").strip()).isEqualTo("title-hint title-error");
        assertThat(page.select("#title-error").text()).isEqualTo("Write a title.");
        assertThat(page.select("#title").val()).isEqualTo("<b>Peg & plate</b>");
        assertThat(page.select("#reason").val()).isEqualTo("<b>Peg & plate</b>");
        assertThat(page.select("textarea").eachAttr("name")).containsExactly("reason", "text");
        assertThat(page.select("#partKg").hasAttr("aria-describedby")).isFalse();
    }

    @Test
    void neverSendsAPasswordBack() throws Exception {
        Document page = page("/sample", person(Role.STUDENT));

        assertThat(page.select("#password").attr("value")).isEmpty();
        assertThat(page.html()).doesNotContain("secret");
    }

    @Test
    void keepsWhatWasChosen() throws Exception {
        Document page = page("/sample", person(Role.STUDENT));

        assertThat(page.select("#cell option[selected]").eachAttr("value")).containsExactly("bittern");
        assertThat(page.select("input[name=ending][checked]").eachAttr("value")).containsExactly("avocet");
        assertThat(page.select("input[name=several][checked]").eachAttr("value"))
                .containsExactly("avocet", "bittern");
        assertThat(page.select("#needsOne[checked]")).hasSize(1);
        assertThat(UUID.fromString(page.select("input[name=formToken]").val())).isNotNull();
        assertThat(page.select(".field #upload")).hasSize(1);
    }

    @Test
    void saysWhatIsNotThereInWords() throws Exception {
        Document page = page("/sample", person(Role.STUDENT));

        assertThat(page.select(".three tbody tr").text())
                .contains("Override does not agree", "not in the file", "not read yet");
        assertThat(page.select(".state[data-state=released]").text()).isEqualTo("released until 10:42");
        assertThat(page.select("time[data-countdown]").text()).isEqualTo("10:42");
        assertThat(page.select(".gauge .held").attr("width")).isEqualTo("40%");
        assertThat(page.select("nav.pager a").attr("href")).isEqualTo("/runs?after=7");
    }

    @Test
    void drawsAStripAndWritesItAsATable() throws Exception {
        Document page = page("/sample/strip", person(Role.STUDENT));

        assertThat(page.select("figure.strip svg svg").eachAttr("x")).containsExactly("50.000%", "75.000%");
        assertThat(page.select("figure.strip svg a").eachAttr("href")).containsExactly("/bookings/7");
        assertThat(page.select("figure.strip svg a").eachAttr("aria-label"))
                .startsWith("12:00-12:30: Noor <Candlewick>, Mateo Ironbark, booked");
        assertThat(page.select("figure.strip svg text").eachText()).contains("Noor", "Mateo", "now");
        assertThat(page.select("figure.strip tbody tr").eachText())
                .containsExactly("12:00-12:30 Noor <Candlewick> Mateo Ironbark booked", "12:30-13:00 free free");
    }

    @Test
    void asksOnceMoreWithAFormOfItsOwn() throws Exception {
        Document page = page("/sample/strip", person(Role.STUDENT));

        assertThat(page.select("form[action=/bookings/7/cancel] button").text()).isEqualTo("Cancel the slot");
        assertThat(page.select("input[name=version]").val()).isEqualTo("3");
        assertThat(page.select("input[name=formToken]")).hasSize(1);
        assertThat(page.select("a[href=/me]").text()).isEqualTo("Keep it as it is");
    }

    @SpringBootConfiguration
    @EnableAutoConfiguration
    @Import({SamplePages.class, FormTokens.class, LabTime.class, StripDialect.class})
    static class Samples {

        @Bean
        Clock clock() {
            return Clock.fixed(Instant.parse("2026-11-26T09:30:00Z"), ZoneOffset.UTC);
        }
    }

    /** A row as features give it to the three columns. */
    record Row(
            String item,
            @Nullable String declared,
            @Nullable String found,
            @Nullable String read,
            String state) {}

    @Controller
    static class SamplePages {

        @GetMapping("/sample")
        String sample(Model model) {
            Map<String, String> errors = new LinkedHashMap<>();
            errors.put("title", "Write a title.");
            errors.put("ending", "Choose how it ends.");
            model.addAttribute("errors", errors);
            model.addAttribute("programTitle", "<b>Peg & plate</b>");
            model.addAttribute("cells", new TreeMap<>(Map.of("avocet", "Avocet", "bittern", "Bittern")));
            model.addAttribute("chosen", List.of("avocet", "bittern"));
            model.addAttribute("rows", List.of(new Row("Override", "50 %", null, null, "disagrees")));
            return "sample/page";
        }

        @GetMapping("/sample/strip")
        String strip(Model model) {
            Instant noon = Instant.parse("2026-11-26T12:00:00Z");
            Instant half = noon.plusSeconds(1800);
            StripScale scale = new StripScale(noon.minusSeconds(3600), noon.plusSeconds(3600), ZoneOffset.UTC);
            List<StripBlock> blocks = List.of(
                    new StripBlock(
                            scale.place(noon),
                            "5.000%",
                            "12:00-12:30",
                            "Noor <Candlewick>",
                            "Mateo Ironbark",
                            "booked",
                            "booked",
                            "/bookings/7",
                            true),
                    new StripBlock(
                            scale.place(half), "5.000%", "12:30-13:00", "free", "", "free", "free", null, false));
            model.addAttribute("strip", new Strip("avocet", "Avocet", scale.hours(), blocks, scale.placeWithin(noon)));
            model.addAttribute("hidden", Map.of("version", "3"));
            return "sample/strip";
        }

        @GetMapping("/sample/bench")
        String bench() {
            return "sample/bench";
        }
    }
}
