package org.standclear.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Colours are named in one file and can be told apart by people who see little contrast, by day and in the dark. */
class LookTests {

    private static final Path STATIC = Path.of("src/main/resources/static");
    private static final Pattern TOKEN = Pattern.compile("--([a-z0-9-]+): (#[0-9a-f]{6});");
    private static final Pattern COLOUR = Pattern.compile("#[0-9a-fA-F]{3,8}\\b|\\b(?:rgb|hsl|oklch)a?\\(");
    private static final double TEXT = 4.5;
    private static final double SHAPES = 3.0;

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Map<String, String> theme(boolean dark) {
        String[] parts = read(STATIC.resolve("css/tokens.css")).split("@media \\(prefers-color-scheme: dark\\)");
        assertThat(parts).hasSize(2);
        Map<String, String> tokens = new HashMap<>();
        for (String part : dark ? List.of(parts) : List.of(parts[0])) {
            TOKEN.matcher(part).results().forEach(token -> tokens.put(token.group(1), token.group(2)));
        }
        return tokens;
    }

    private static String token(boolean dark, String name) {
        return Objects.requireNonNull(theme(dark).get(name), () -> "no token " + name);
    }

    /** WCAG 2.2, "relative luminance" and "contrast ratio" (grade P). */
    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String hex) {
        return 0.2126 * channel(hex, 1) + 0.7152 * channel(hex, 3) + 0.0722 * channel(hex, 5);
    }

    private static double channel(String hex, int at) {
        double value = Integer.parseInt(hex.substring(at, at + 2), 16) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    /** Black on white is 21 by definition; #767676 on white is the lightest grey that passes, 4.54 (grade P). */
    @Test
    void computesContrastAsPublished() {
        assertThat(contrast("#000000", "#ffffff")).isCloseTo(21, within(1e-9));
        assertThat(contrast("#ffffff", "#767676")).isCloseTo(4.54, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({
        "ink,paper",
        "ink,card",
        "ink,inset",
        "ink,do-wash",
        "ink,caution-wash",
        "ink,stop-wash",
        "muted,paper",
        "muted,card",
        "muted,inset",
        "muted,stop-wash",
        "do,paper",
        "do,card",
        "do,inset",
        "do-deep,card",
        "on-do,do",
        "on-do,do-deep",
        "stop,card",
        "stop,stop-wash",
        "on-stop,stop-fill",
        "on-caution,caution"
    })
    void keepsLettersReadable(String letters, String ground) {
        assertThat(contrast(token(false, letters), token(false, ground)))
                .as("by day")
                .isGreaterThanOrEqualTo(TEXT);
        assertThat(contrast(token(true, letters), token(true, ground)))
                .as("in the dark")
                .isGreaterThanOrEqualTo(TEXT);
    }

    @ParameterizedTest
    @CsvSource({"line-strong,card", "line-strong,inset", "do,card", "stop,card", "stop-fill,card"})
    void keepsEdgesVisible(String edge, String ground) {
        assertThat(contrast(token(false, edge), token(false, ground)))
                .as("by day")
                .isGreaterThanOrEqualTo(SHAPES);
        assertThat(contrast(token(true, edge), token(true, ground)))
                .as("in the dark")
                .isGreaterThanOrEqualTo(SHAPES);
    }

    @Test
    void namesColoursInOneFile() throws IOException {
        try (Stream<Path> files = Files.walk(STATIC.resolve("css"))) {
            List<Path> others = files.filter(file -> file.toString().endsWith(".css"))
                    .filter(file -> !file.endsWith("tokens.css") && !file.endsWith("print.css"))
                    .toList();
            assertThat(others)
                    .hasSizeGreaterThan(5)
                    .allSatisfy(file -> assertThat(COLOUR.matcher(read(file)).find())
                            .as("a colour in " + file)
                            .isFalse());
        }
        assertThat(COLOUR.matcher("a { color: #fff; }").find()).isTrue();
        assertThat(COLOUR.matcher("a { color: rgb(1 2 3); }").find()).isTrue();
    }

    @Test
    void carriesALicenceForEachTypeface() throws IOException {
        try (Stream<Path> files = Files.list(STATIC.resolve("fonts"))) {
            assertThat(files.map(Path::getFileName).map(Path::toString).toList())
                    .hasSizeGreaterThan(3)
                    .filteredOn(name -> name.endsWith(".woff2"))
                    .allSatisfy(name -> assertThat(
                                    STATIC.resolve("fonts").resolve(name.replaceFirst("-latin.*", "-LICENSE.txt")))
                            .content()
                            .contains("SIL Open Font License"));
        }
    }

    @Test
    void linksEveryStyleSheet() throws IOException {
        String head = read(Path.of("src/main/resources/templates/layout/head.html"));
        try (Stream<Path> files = Files.walk(STATIC.resolve("css"))) {
            assertThat(files.filter(file -> file.toString().endsWith(".css"))
                            .map(file ->
                                    "@{/" + STATIC.relativize(file).toString().replace('\\', '/') + "}"))
                    .allSatisfy(link -> assertThat(head).contains(link));
        }
    }
}
