package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The compiler, called as the build calls it, refuses a null where none is declared. */
class NullnessIT {

    @TempDir
    Path folder;

    @BeforeEach
    void hasTheCompilersPlugins() {
        // the execution of its own in pom.xml brings them; a run from elsewhere does not
        assumeThat(System.getProperty("java.class.path")).contains("error_prone_core", "nullaway");
    }

    private String compile(String method) throws Exception {
        Files.writeString(
                folder.resolve("package-info.java"),
                "@NullMarked package planted; import org.jspecify.annotations.NullMarked;");
        Files.writeString(
                folder.resolve("Name.java"),
                "package planted; import org.jspecify.annotations.Nullable; class Name { " + method + " }");
        Process javac = new ProcessBuilder(command()).redirectErrorStream(true).start();
        String said = new String(javac.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return javac.waitFor() == 0 ? "compiled" : said;
    }

    private List<String> command() throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "javac").toString());
        jvmOptions().forEach(option -> command.add("-J" + option));
        String classPath = System.getProperty("java.class.path");
        command.addAll(List.of("-cp", classPath, "-processorpath", classPath, "-d", folder.toString()));
        command.addAll(Pom.compilerArguments());
        command.add(folder.resolve("package-info.java").toString());
        command.add(folder.resolve("Name.java").toString());
        return command;
    }

    /** Each line holds an option and its value, which the command line takes as one word joined by an equals sign. */
    private static List<String> jvmOptions() throws IOException {
        return Files.readAllLines(Path.of(".mvn", "jvm.config")).stream()
                .filter(line -> !line.isBlank())
                .map(line -> line.replaceFirst(" ", "="))
                .toList();
    }

    @Test
    void refusesAnUndeclaredNull() throws Exception {
        assertThat(compile("String say(@Nullable String name) { return name; }"))
                .contains("[NullAway] returning @Nullable expression from method with @NonNull return type");
    }

    @Test
    void takesADeclaredOne() throws Exception {
        assertThat(compile("@Nullable String say(@Nullable String name) { return name; }"))
                .isEqualTo("compiled");
    }
}
