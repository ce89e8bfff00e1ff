package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.people.PersonalTokens;
import org.standclear.people.PersonalTokens.Created;
import org.standclear.platform.security.Role;
import org.standclear.program.SampleProgram;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** The check by HTTP: a token and a file in, the answer out; every error is a problem as RFC 9457 has it. */
class CheckCallsIT {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final YAMLMapper YAML = new YAMLMapper();
    private static final Path SAMPLES = Path.of("seed-data", "programs");

    abstract static class Cases {

        @Autowired
        MockMvc mvc;

        @Autowired
        PeopleRegister people;

        @Autowired
        PersonalTokens tokens;

        @Autowired
        CellRegister register;

        @Autowired
        MovableClock clock;

        @Autowired
        JdbcClient jdbc;

        private Created.Kept tokenOf(Person person) {
            return (Created.Kept) tokens.create(person.id(), "homework", 7);
        }

        private String token(Role role) {
            return tokenOf(Accounts.add(people, "Noor Candlewick", role)).text();
        }

        private static MockMultipartFile file(String part, byte[] bytes) {
            return new MockMultipartFile(part, part + ".yaml", "application/yaml", bytes);
        }

        private static MockMultipartFile file(String part, String text) {
            return file(part, text.getBytes(StandardCharsets.UTF_8));
        }

        private static MockMultipartHttpServletRequestBuilder call(String program) {
            return multipart("/api/checks").file(file("program", program));
        }

        private MockHttpServletResponse send(AbstractMockHttpServletRequestBuilder<?> request, @Nullable String token)
                throws Exception {
            if (token != null) {
                request.header("Authorization", "Bearer " + token);
            }
            return mvc.perform(request).andReturn().getResponse();
        }

        private static JsonNode problem(MockHttpServletResponse response, int status) throws Exception {
            assertThat(response.getStatus()).isEqualTo(status);
            assertThat(response.getContentType()).startsWith("application/problem+json");
            JsonNode problem = JSON.readTree(response.getContentAsString());
            assertThat(problem.get("status").asInt()).isEqualTo(status);
            assertThat(problem.get("type").asString()).isEqualTo("about:blank");
            assertThat(problem.get("title").asString()).isNotBlank();
            assertThat(problem.get("detail").asString()).isNotBlank();
            return problem;
        }

        @Test
        void answersForACellOfTheLabAndKeepsNothing() throws Exception {
            String name = SampleCell.name();
            SampleCell.inForce(register, name);
            String token = token(Role.STUDENT);
            long before = count();
            MockHttpServletResponse response =
                    send(call(SampleProgram.sheet("Peg")).param("cell", name), token);

            assertThat(response.getStatus()).isEqualTo(200);
            assertThat(response.getContentType()).startsWith("application/json");
            assertThat(response.getHeader("Set-Cookie")).isNull();
            JsonNode answer = JSON.readTree(response.getContentAsString());
            assertThat(answer.get("answer-format").asInt()).isEqualTo(1);
            assertThat(answer.get("answer").asString()).isEqualTo("within");
            assertThat(answer.at("/cell/name").asString()).isEqualTo(name);
            assertThat(answer.at("/cell/version").asInt()).isEqualTo(7);
            assertThat(count()).isEqualTo(before);
        }

        private long count() {
            return jdbc.sql("select (select count(*) from check_answers) + (select count(*) from program_revisions)")
                    .query(Long.class)
                    .single();
        }

        @Test
        void answersTheSampleProgramsAsTheSpecificationSays() throws Exception {
            String token = token(Role.INSTRUCTOR);
            int asked = 0;
            for (JsonNode sample : YAML.readTree(Files.readString(SAMPLES.resolve("expected.yaml")))
                    .get("samples")) {
                for (JsonNode expected : sample.get("answers")) {
                    MockMultipartHttpServletRequestBuilder call = multipart("/api/checks");
                    call.file(shipped("program", sample.get("program").asString()));
                    call.file(shipped("cell-file", expected.get("cell").asString()));
                    if (sample.has("declaration")) {
                        call.file(
                                shipped("declaration", sample.get("declaration").asString()));
                    }
                    MockHttpServletResponse response = send(call, token);
                    assertThat(response.getStatus()).isEqualTo(200);
                    assertThat(JSON.readTree(response.getContentAsString()).get("answer"))
                            .as(sample.get("program").asString())
                            .isEqualTo(expected.get("answer"));
                    asked++;
                }
            }
            assertThat(asked).isGreaterThanOrEqualTo(14);
        }

        private static MockMultipartFile shipped(String part, String name) throws Exception {
            return file(part, Files.readAllBytes(SAMPLES.resolve(name)));
        }

        @Test
        void asksForAToken() throws Exception {
            MockHttpServletResponse none = send(call(SampleProgram.sheet("Peg")), null);
            problem(none, 401);
            assertThat(none.getHeader("WWW-Authenticate")).isEqualTo("Bearer");
            MockHttpServletResponse wrong =
                    send(call(SampleProgram.sheet("Peg")), "sctok_aaaaaaaaaa_" + "b".repeat(32));
            assertThat(problem(wrong, 401).get("detail").asString()).contains("does not count");
            assertThat(wrong.getHeader("Content-Security-Policy")).contains("default-src 'none'");
        }

        @Test
        void refusesATokenThatWasRevokedOrHasExpired() throws Exception {
            Person noor = Accounts.add(people, "Noor Candlewick", Role.STUDENT);
            Person mateo = Accounts.add(people, "Mateo Ironbark", Role.STUDENT);
            Created.Kept one = tokenOf(noor);
            assertThat(tokens.revoke(mateo.id(), one.token().id())).isFalse();
            problem(send(call("x"), one.text()), 400);
            assertThat(tokens.revoke(noor.id(), one.token().id())).isTrue();
            problem(send(call("x"), one.text()), 401);

            Created.Kept other = tokenOf(noor);
            problem(send(call("x"), other.text()), 400);
            clock.moveBy(Duration.ofDays(7));
            problem(send(call("x"), other.text()), 401);
        }

        @Test
        void refusesWhoMayNotCheck() throws Exception {
            problem(send(call("x"), token(Role.REVIEWER)), 403);
        }

        @Test
        void pausesAnAddressThatSendsWrongTokens() throws Exception {
            String address = "203.0.113." + (jdbc.hashCode() & 127);
            MockHttpServletResponse last = new MockHttpServletResponse();
            for (int i = 0; i < 25; i++) {
                last = send(
                        call("x").with(request -> {
                            request.setRemoteAddr(address);
                            return request;
                        }),
                        "guess");
            }
            problem(last, 429);
            assertThat(Integer.parseInt(String.valueOf(last.getHeader("Retry-After"))))
                    .isPositive();
        }

        @Test
        void saysWhatIsWrongWithAFileAndWhere() throws Exception {
            String token = token(Role.STUDENT);
            String cell = SampleCell.file("Avocet", 1);
            MockMultipartHttpServletRequestBuilder bad =
                    call("motion-sheet: 1\ntitle: x\nsurprise: 3\n").file(file("cell-file", cell));
            JsonNode problem = problem(send(bad, token), 422);
            assertThat(problem.get("part").asString()).isEqualTo("program");
            assertThat(problem.get("line").asInt()).isEqualTo(3);
            assertThat(problem.get("detail").asString()).contains("line 3", "surprise");

            MockMultipartHttpServletRequestBuilder cellIsBad =
                    call(SampleProgram.sheet("Peg")).file(file("cell-file", "cell-file: [1"));
            assertThat(problem(send(cellIsBad, token), 422).get("part").asString())
                    .isEqualTo("cell-file");
            MockMultipartHttpServletRequestBuilder notText = multipart("/api/checks")
                    .file(file("program", new byte[] {(byte) 0xff, (byte) 0xfe, 0}))
                    .file(file("cell-file", cell));
            problem(send(notText, token), 422);
        }

        @Test
        void saysWhatIsMissing() throws Exception {
            String token = token(Role.STUDENT);
            problem(send(multipart("/api/checks"), token), 400);
            assertThat(problem(send(call("x"), token), 400).get("detail").asString())
                    .contains("Name one cell");
            assertThat(problem(send(call("x").param("cell", "No such cell"), token), 404)
                            .get("detail")
                            .asString())
                    .contains("no cell of that name");
        }

        @Test
        void refusesWhatIsTooLargeOrOfAnotherKind() throws Exception {
            String token = token(Role.STUDENT);
            byte[] large = new byte[8 * 1024 * 1024 + 1];
            java.util.Arrays.fill(large, (byte) '#');
            MockMultipartHttpServletRequestBuilder call = multipart("/api/checks")
                    .file(file("program", large))
                    .file(file("cell-file", SampleCell.file("Avocet", 1)));
            problem(send(call, token), 413);
            problem(send(post("/api/checks").contentType("application/json").content("{}"), token), 415);
            MockHttpServletResponse other = send(get("/api/checks"), token);
            problem(other, 405);
            assertThat(other.getHeader("Allow")).isEqualTo("POST");
            problem(send(get("/api/nothing"), token), 404);
        }

        @Test
        void isDescribedAsItIs() throws Exception {
            MockHttpServletResponse response = send(get("/api/openapi.yaml"), null);
            assertThat(response.getStatus()).isEqualTo(200);
            JsonNode description = YAML.readTree(response.getContentAsString());
            assertThat(names(description.get("paths"))).containsExactly("/api/checks", "/api/openapi.yaml");
            JsonNode call = description.at("/paths/~1api~1checks/post");
            assertThat(names(call.get("responses")))
                    .containsExactly("200", "400", "401", "403", "404", "409", "413", "415", "422", "429", "503");
            assertThat(names(call.at("/requestBody/content/multipart~1form-data/schema/properties")))
                    .containsExactly("cell", "cell-file", "declaration", "lab", "phrasebook", "program");

            JsonNode schema = JSON.readTree(Files.readString(Path.of("docs", "formats", "answer.schema.json")));
            assertThat(names(description.at("/components/schemas/Answer/properties")))
                    .isEqualTo(names(schema.get("properties")));
            assertThat(send(get("/swagger-ui/index.html"), null).getStatus()).isNotEqualTo(200);
        }

        private static Set<String> names(JsonNode object) {
            return new TreeSet<>(object.propertyNames());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
