package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.commandline.Commands;
import org.standclear.people.Person;
import org.standclear.people.PersonalTokens;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.program.Phrasebooks;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.PageCases;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Page, command line and call give one answer for every sample program: the expected one, with the same numbers. */
@OnH2
class ThreeWaysIT extends PageCases {

    private static final Path FOLDER = Path.of("seed-data", "programs");
    private static final Path BOOK = Path.of("seed-data", "phrasebooks", "plain-words.yaml");
    private static final YAMLMapper YAML = new YAMLMapper();

    /** What a comparison forgives does not show as a step up. */
    private static final BigDecimal FORGIVEN = new BigDecimal("1e-9");

    /** The facts of the page under "How it moves", and where the answer has them. */
    private static final Map<String, String> FACTS = Map.of(
            "Tool point, held", "held-tool-peak-mm-s",
            "Tool point, full power", "full-power-tool-peak-mm-s",
            "Fastest part, held", "held-fastest-part-mm-s",
            "One pass", "cycle-time-s",
            "One pass, full power", "full-power-cycle-time-s",
            "Reaches out", "largest-radius-mm",
            "Separation", "separation-mm");

    /** The columns of the table of steps, likewise. */
    private static final List<String> COLUMNS = List.of(
            "duration-s",
            "held-tool-peak-mm-s",
            "full-power-tool-peak-mm-s",
            "held-elbow-peak-mm-s",
            "held-fastest-part-mm-s");

    @Autowired
    CellRegister register;

    @Autowired
    Phrasebooks phrasebooks;

    @Autowired
    PersonalTokens tokens;

    @TempDir
    Path folder;

    private Person student = new Person(PersonId.next(), "", "", java.util.Set.of(), true);

    @BeforeEach
    void aStudent() {
        student = person(Role.STUDENT);
    }

    /** A program on a cell; what it has to answer is null where expected.yaml does not list it. */
    record Sample(Path program, Path cell, Path declaration, String answer) {

        @Override
        public String toString() {
            return program.getFileName() + " on " + cell.getFileName();
        }

        boolean isSpoken() {
            return program.toString().endsWith(".txt");
        }

        boolean declares() {
            return Files.isRegularFile(declaration);
        }
    }

    /** Every sample, as it is listed and in the invented language, and one in blocks. */
    static List<Sample> samples() throws IOException {
        List<Sample> samples = new ArrayList<>();
        JsonNode listed = YAML.readTree(Files.readString(FOLDER.resolve("expected.yaml")));
        for (JsonNode sample : listed.get("samples")) {
            String program = sample.get("program").asString();
            add(samples, sample, program);
            add(samples, sample, "plain-words/" + program.replace(".yaml", ".txt"));
        }
        for (JsonNode sample : listed.get("spoken-only")) {
            add(samples, sample, sample.get("program").asString());
        }
        assertThat(samples).hasSizeGreaterThanOrEqualTo(40);
        samples.add(new Sample(
                FOLDER.resolve("gantry-sort-blocks.txt"), Path.of("seed-data", "cells", "dunlin.yaml"), FOLDER, ""));
        return samples;
    }

    private static void add(List<Sample> samples, JsonNode sample, String program) {
        for (JsonNode expected : sample.get("answers")) {
            samples.add(new Sample(
                    FOLDER.resolve(program),
                    FOLDER.resolve(expected.get("cell").asString()),
                    FOLDER.resolve(sample.path("declaration").asString("")),
                    expected.get("answer").asString()));
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void agree(Sample sample) throws Exception {
        // the cell under a name of its own: tests share a database
        String cellFile = Files.readString(sample.cell()).replaceFirst("(?m)^name: .*$", "name: " + SampleCell.name());

        JsonNode line = byCommandLine(sample, cellFile);
        JsonNode call = byCall(sample, cellFile);
        String path = byPage(sample, cellFile);
        JsonNode kept =
                YAML.readTree(send(get(path + "/answer.json"), student).getContentAsString(StandardCharsets.UTF_8));

        assertThat(call).as("call and command line").isEqualTo(line);
        if (!sample.answer().isEmpty()) {
            assertThat(line.get("answer").asString()).isEqualTo(sample.answer());
        }
        for (String part : List.of("answer", "motion", "contact")) {
            assertThat(kept.get(part)).as(part).isEqualTo(line.get(part));
        }
        assertThat(outcomes(kept)).isEqualTo(outcomes(line));
        shows(page(get(path), student), line);
    }

    /** Which check found what, with its numbers; whose limit counts is said otherwise where a course has one too. */
    private static List<String> outcomes(JsonNode answer) {
        return StreamSupport.stream(answer.get("findings").spliterator(), false)
                .map(one -> one.get("check").asString() + " "
                        + one.get("outcome").asString() + " " + one.path("observed") + " " + one.path("limit") + " "
                        + one.path("step") + " " + one.path("line"))
                .toList();
    }

    private JsonNode byCommandLine(Sample sample, String cellFile) throws IOException {
        List<String> words = new ArrayList<>(List.of("check", "--json", "--cell"));
        words.add(Files.writeString(folder.resolve("cell.yaml"), cellFile).toString());
        words.add(sample.program().toString());
        if (sample.declares()) {
            words.addAll(List.of("--declaration", sample.declaration().toString()));
        }
        if (sample.isSpoken()) {
            words.addAll(List.of("--phrasebook", BOOK.toString()));
        }
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Commands.run(new PrintWriter(out), new PrintWriter(err), words.toArray(String[]::new));
        assertThat(err.toString()).isEmpty();
        return YAML.readTree(out.toString());
    }

    private JsonNode byCall(Sample sample, String cellFile) throws Exception {
        MockMultipartHttpServletRequestBuilder call = multipart("/api/checks");
        call.file(file("program", Files.readAllBytes(sample.program())));
        call.file(file("cell-file", cellFile.getBytes(StandardCharsets.UTF_8)));
        if (sample.declares()) {
            call.file(file("declaration", Files.readAllBytes(sample.declaration())));
        }
        if (sample.isSpoken()) {
            call.file(file("phrasebook", Files.readAllBytes(BOOK)));
        }
        String token = ((PersonalTokens.Created.Kept) tokens.create(student.id(), "homework", 7)).text();
        call.header("Authorization", "Bearer " + token);
        MockHttpServletResponse response = mvc.perform(call).andReturn().getResponse();
        assertThat(response.getStatus()).as(response.getContentAsString()).isEqualTo(200);
        return YAML.readTree(response.getContentAsString(StandardCharsets.UTF_8));
    }

    private String byPage(Sample sample, String cellFile) throws IOException {
        int version = YAML.readTree(cellFile).get("version").asInt();
        UUID proposal = SampleCell.proposed(register, null, cellFile);
        CellId cell = ((CellRegister.Decided.Done) register.approve(proposal, PersonId.next(), 0)).cell();
        assertThat(version).isPositive();
        if (sample.isSpoken()) {
            phrasebooks.keep(new Phrasebooks.NewVersion(cell, Files.readString(BOOK), "first draft", student.id(), 0));
        }
        MockMultipartHttpServletRequestBuilder form = multipart("/check");
        form.file(file("upload", Files.readAllBytes(sample.program())));
        if (sample.declares()) {
            form.file(file("declarationFile", Files.readAllBytes(sample.declaration())));
        }
        form.param("formToken", UUID.randomUUID().toString()).param("cell", cell.toString());
        return location(send(form, student));
    }

    private static MockMultipartFile file(String part, byte[] bytes) {
        return new MockMultipartFile(part, part + ".txt", "text/plain", bytes);
    }

    /** Every number of the page is the answer's, rounded up to the digits that the page shows. */
    private static void shows(Document page, JsonNode answer) {
        JsonNode motion = answer.get("motion");
        FACTS.forEach(
                (name, field) -> assertThat(fact(page, name)).as(name).startsWith(shown(motion.get(field), field)));
        List<Element> rows = page.select("section[aria-labelledby=motion] tbody tr");
        assertThat(rows).hasSize(motion.get("steps").size());
        for (int i = 0; i < rows.size(); i++) {
            JsonNode step = motion.get("steps").get(i);
            List<String> cells = rows.get(i).select("td").eachText();
            assertThat(cells.get(0)).isEqualTo(step.get("kind").asString());
            assertThat(cells.get(1)).isEqualTo(step.get("line").asString());
            for (int column = 0; column < COLUMNS.size(); column++) {
                String field = COLUMNS.get(column);
                assertThat(cells.get(2 + column).split(" s$")[0]).isEqualTo(shown(step.get(field), field));
            }
        }
        assertThat(page.select(".finding")).hasSize(answer.get("findings").size());
        draws(page, motion);
    }

    /** The pictures are made from the motion that the answer was made from: they say the same numbers. */
    private static void draws(Document page, JsonNode motion) {
        String speed = page.select("figure[data-kind=speed] figcaption").text();
        assertThat(speed)
                .contains("the tool point reaches " + orUnknown(motion, "held-tool-peak-mm-s", " mm/s", "speed"))
                .contains("the pass takes " + orUnknown(motion, "cycle-time-s", " s", "time"));
        for (JsonNode step : motion.get("steps")) {
            String key = step.get("step").asString() + (step.has("closing") ? "-closing" : "");
            String kind = step.get("kind").asString();
            if (kind.equals("wait") || kind.equals("do")) {
                continue;
            }
            String peak = step.get("held-tool-peak-mm-s").isNull()
                    ? ", speed not known"
                    : ", at most " + shown(step.get("held-tool-peak-mm-s"), "held-tool-peak-mm-s") + " mm/s";
            assertThat(page.select("svg[data-drawing=speed] g[data-step=" + key + "] title")
                            .text())
                    .as("step " + key)
                    .endsWith(peak);
        }
    }

    private static String orUnknown(JsonNode motion, String field, String unit, String what) {
        JsonNode value = motion.get(field);
        return value.isNull() ? "a " + what + " that is not known" : shown(value, field) + unit;
    }

    private static String fact(Document page, String name) {
        return page.select("section[aria-labelledby=motion] dt").stream()
                .filter(term -> term.text().equals(name))
                .map(Element::nextElementSibling)
                .filter(Objects::nonNull)
                .findFirst()
                .orElseThrow()
                .text();
    }

    private static String shown(JsonNode value, String field) {
        if (value.isNull()) {
            return "not known";
        }
        BigDecimal exact = value.decimalValue();
        BigDecimal up = exact.subtract(exact.abs().multiply(FORGIVEN))
                .setScale(field.endsWith("-s") && !field.endsWith("mm-s") ? 2 : 1, RoundingMode.CEILING)
                .stripTrailingZeros();
        return up.signum() == 0 ? "0" : up.toPlainString();
    }
}
