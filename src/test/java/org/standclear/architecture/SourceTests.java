package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Source files keep the house style where a machine can tell. */
class SourceTests {

    private static final int LONGEST_FILE = 300;
    private static final int LONGEST_METHOD = 40;

    private static final List<TextFile> MAIN = TextFile.below("src/main/java", ".java");
    private static final List<TextFile> ALL = Stream.concat(
                    MAIN.stream(), TextFile.below("src/test/java", ".java").stream())
            .toList();
    private static final List<TextFile> SHOWN = Stream.of(".css", ".js", ".html")
            .flatMap(end -> TextFile.below("src/main/resources", end).stream())
            .toList();

    private static final Pattern EMPTY_WORDS = Pattern.compile(".*(Util|Utils|Manager|Helper|Impl|Dto|DTO)");
    private static final Pattern PUBLIC_TYPE = Pattern.compile(
            "^public (?:(?:abstract|final|sealed|non-sealed) )*(?:class|record|interface|enum|@interface) ");

    private static List<String> faults(List<TextFile> files, Function<TextFile, List<String>> rule) {
        return files.stream()
                .flatMap(file -> rule.apply(file).stream().map(fault -> file.path() + ": " + fault))
                .toList();
    }

    private static List<String> tooLong(TextFile file) {
        int lines = file.lines().size();
        return lines > LONGEST_FILE ? List.of(lines + " lines, " + LONGEST_FILE + " at most") : List.of();
    }

    private static List<String> emptyWord(TextFile file) {
        return EMPTY_WORDS.matcher(file.stem()).matches() ? List.of("the name says nothing") : List.of();
    }

    private static List<String> undescribed(TextFile file) {
        List<String> lines = file.lines();
        for (int i = 0; i < lines.size(); i++) {
            if (PUBLIC_TYPE.matcher(lines.get(i)).find()) {
                boolean described = lines.subList(0, i).stream().anyMatch(line -> line.startsWith("/**"));
                return described ? List.of() : List.of("the public type has no sentence on what it is for");
            }
        }
        return List.of();
    }

    /** Packages with code but without a package-info of one sentence that marks them as null-safe. */
    private static List<String> unmarkedPackages(List<TextFile> files) {
        Set<Path> marked = files.stream()
                .filter(file -> file.name().equals("package-info.java"))
                .filter(file -> file.text().startsWith("/**") && file.text().contains("@NullMarked"))
                .map(file -> file.path().getParent())
                .collect(Collectors.toSet());
        return files.stream()
                .map(file -> file.path().getParent())
                .distinct()
                .filter(folder -> !marked.contains(folder))
                .map(Path::toString)
                .toList();
    }

    /** An id with a second spelling passes who looks through a request for ids; only {@code Id} reads one. */
    private static List<String> looseIds(TextFile file) {
        boolean reads = file.text().contains("UUID.from" + "String(");
        return reads && !Set.of("Id", "LabOfRequest").contains(file.stem())
                ? List.of("reads an id loosely")
                : List.of();
    }

    @Test
    void idsAreReadInOnePlace() {
        assertThat(faults(MAIN, SourceTests::looseIds)).isEmpty();
        assertThat(looseIds(planted("Run.java", "UUID.from" + "String(text)"))).hasSize(1);
    }

    @Test
    void filesAreShort() {
        assertThat(faults(ALL, SourceTests::tooLong)).isEmpty();
        assertThat(SHOWN).hasSizeGreaterThan(100);
        assertThat(faults(SHOWN, SourceTests::tooLong)).isEmpty();
    }

    @Test
    void methodsAreShort() {
        assertThat(MethodLengths.above(LONGEST_METHOD, MAIN)).isEmpty();
    }

    @Test
    void namesSaySomething() {
        assertThat(faults(ALL, SourceTests::emptyWord)).isEmpty();
    }

    @Test
    void publicTypesSayWhatTheyAreFor() {
        assertThat(faults(MAIN, SourceTests::undescribed)).isEmpty();
    }

    @Test
    void everyPackageIsMarkedNullSafe() {
        assertThat(MAIN).hasSizeGreaterThan(50);
        assertThat(unmarkedPackages(MAIN)).isEmpty();
    }

    /** Such a file would hide the one of the application, and with it what its package may use. */
    @Test
    void testsDescribeOnlyPackagesOfTheirOwn() {
        Set<String> described = packagesDescribedIn(MAIN);

        assertThat(packagesDescribedIn(TextFile.below("src/test/java", ".java")))
                .isNotEmpty()
                .doesNotContainAnyElementsOf(described);
        assertThat(described).contains("org/standclear");
    }

    private static Set<String> packagesDescribedIn(List<TextFile> files) {
        return files.stream()
                .filter(file -> file.name().equals("package-info.java"))
                .map(file -> file.path().toString().replace('\\', '/'))
                .map(path -> path.replaceFirst("^src/(main|test)/java/", "").replace("/package-info.java", ""))
                .collect(Collectors.toSet());
    }

    private static TextFile planted(String name, String text) {
        return new TextFile(Path.of("src", "planted", name), text);
    }

    @Test
    void catchesWhatBreaksTheStyle() {
        assertThat(tooLong(planted("Run.java", "\n".repeat(301)))).containsExactly("301 lines, 300 at most");
        assertThat(tooLong(planted("Run.java", "\n".repeat(300)))).isEmpty();
        assertThat(emptyWord(planted("RunManager.java", ""))).hasSize(1);
        assertThat(emptyWord(planted("RunLog.java", ""))).isEmpty();
        assertThat(undescribed(planted("Run.java", "package a;\n\npublic final class Run {}\n")))
                .hasSize(1);
        assertThat(undescribed(planted("Run.java", "package a;\n\n/** A run. */\npublic record Run() {}\n")))
                .isEmpty();
    }

    @Test
    void catchesALongMethod() {
        String body = "        go();\n".repeat(41);

        assertThat(MethodLengths.above(
                        40, List.of(planted("Run.java", "class Run {\n    void go() {\n" + body + "    }\n}\n"))))
                .containsExactly("41 lines in go of /src/planted/Run.java");
        assertThat(MethodLengths.above(
                        41, List.of(planted("Run.java", "class Run {\n    void go() {\n" + body + "    }\n}\n"))))
                .isEmpty();
    }

    @Test
    void catchesAPackageWithoutMark() {
        TextFile code = planted("Run.java", "");

        assertThat(unmarkedPackages(List.of(code))).hasSize(1);
        assertThat(unmarkedPackages(
                        List.of(code, planted("package-info.java", "/** Runs. */\n@NullMarked\npackage a;"))))
                .isEmpty();
    }
}
