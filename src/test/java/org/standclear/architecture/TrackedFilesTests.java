package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Files of the project name no machine, account or network of the people who work on it. */
class TrackedFilesTests {

    // put together here so that this file does not hold what it looks for
    private static final Pattern MACHINE_PATH = Pattern.compile(
            "(?<![\\w.${}-])/(?:work|home|root|Users)" + "/[\\w.-]+" + "|[A-Z]:\\\\+Users" + "\\\\|/tmp" + "/[\\w.-]+");
    private static final Pattern PRIVATE_HOST = Pattern.compile("https?://(?:[\\w.-]+@)?(?:"
            + "10\\.\\d|192\\.168\\.|172\\.(?:1[6-9]|2\\d|3[01])\\."
            + "|[\\w.-]+\\.(?:internal|local|lan|corp|intra)\\b|[\\w.-]*(?:artifactory|nexus|mirror)[\\w.-]*)");

    private static final List<String> TOP_LEVEL = List.of(
            "README.md",
            "DEVELOPERS.md",
            "LICENSE",
            "pom.xml",
            "docker-compose.yml",
            "src",
            "db",
            "seed-data",
            "docs",
            ".ci",
            ".mvn",
            ".gitignore");

    private static List<String> tracked() throws IOException, InterruptedException {
        Process git =
                new ProcessBuilder("git", "ls-files").redirectErrorStream(true).start();
        String said = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (git.waitFor() == 0) {
            return said.lines()
                    .filter(name -> Files.isRegularFile(Path.of(name)))
                    .toList();
        }
        // an unpacked archive: take what belongs to the project
        try (Stream<Path> files =
                TOP_LEVEL.stream().map(Path::of).filter(Files::exists).flatMap(TrackedFilesTests::walk)) {
            return files.map(Path::toString).toList();
        }
    }

    private static Stream<Path> walk(Path root) {
        try {
            return Files.walk(root).filter(Files::isRegularFile);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static Stream<String> faults(String text) {
        return Stream.of(MACHINE_PATH, PRIVATE_HOST)
                .flatMap(pattern -> pattern.matcher(text).results().map(MatchResult::group));
    }

    private static String textOf(String file) throws IOException {
        try {
            return Files.readString(Path.of(file));
        } catch (MalformedInputException picture) {
            return "";
        }
    }

    @Test
    void nameNoMachine() throws IOException, InterruptedException {
        List<String> files = tracked();
        assertThat(files).hasSizeGreaterThan(50).contains("pom.xml");
        for (String file : files) {
            assertThat(faults(textOf(file))).as(file).isEmpty();
        }
    }

    @Test
    void standInTheKnownFolders() throws IOException, InterruptedException {
        assertThat(tracked().stream()
                        .map(file -> Path.of(file).getName(0).toString())
                        .distinct())
                .isSubsetOf(TOP_LEVEL);
    }

    @Test
    void catchesPathsAndPrivateHosts() {
        assertThat(faults("see /ho" + "me/noor/standclear")).hasSize(1);
        assertThat(faults("in /wo" + "rk/main")).hasSize(1);
        assertThat(faults("from https://" + "nexus.example.org/maven")).hasSize(1);
        assertThat(faults("from http://" + "10.2.3.4/maven and https://" + "repo.corp/maven"))
                .hasSize(2);
        assertThat(faults("https://www.w3.org/TR/WCAG22 and http://localhost:8080/today, /path/to/jdk"))
                .isEmpty();
    }
}
