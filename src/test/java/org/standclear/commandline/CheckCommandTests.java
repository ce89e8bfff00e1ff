package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;

/** The commands {@code check} and {@code check-all}: exit status, encoding, sizes, wrong usage, tables. */
class CheckCommandTests {

    private static final String BOOK = """
            phrasebook: 1
            name: Test
            phrases:
              - {pattern: 'go {point}', means: joint-move}
            """;

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private Path write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    private int run(Object... arguments) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        String[] words = Arrays.stream(arguments).map(Object::toString).toArray(String[]::new);
        return Commands.run(new PrintWriter(out), new PrintWriter(err), words);
    }

    private int check(Object... more) throws IOException {
        List<Object> arguments = new ArrayList<>(
                List.of("check", "--cell", write("cell.yaml", CellText.scara().text())));
        arguments.addAll(List.of(more));
        return run(arguments.toArray());
    }

    @Test
    void tellsTheAnswerByItsStatus() throws IOException {
        SheetText sheet = SheetText.scara();
        assertThat(check(write("a.yaml", sheet.text()))).isZero();
        assertThat(out.toString()).contains("within limits, checked against Avocet v7", "not a safety function");
        assertThat(check(write(
                        "a.yaml", sheet.with("power: reduced", "power: full").text())))
                .isEqualTo(1);
        assertThat(check(write("a.yaml", sheet.without("part-kg").text()))).isEqualTo(2);
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void namesTheLineOfBadInputAndNothingElse() throws IOException {
        assertThat(check(
                        write("a.yaml", SheetText.scara().with("wait-s", "wait").text())))
                .isEqualTo(64);
        assertThat(err.toString()).contains("a.yaml, line 20: ").hasLineCount(1);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void refusesWhatIsNotUtf8() throws IOException {
        Path latin = folder.resolve("latin.yaml");
        Files.write(latin, SheetText.scara().with("Peg", "Pég").text().getBytes(StandardCharsets.ISO_8859_1));
        assertThat(check(latin)).isEqualTo(64);
        assertThat(err.toString()).contains("line 2: the file is not UTF-8 text");
        assertThat(check(write("mark.yaml", "\uFEFF" + SheetText.scara().text())))
                .isZero();
        assertThat(check(write("nul.yaml", "a\0b"))).isEqualTo(64);
    }

    @Test
    void refusesFilesThatAreTooLong() throws IOException {
        Path large = write("large.yaml", SheetText.scara().text() + "#".repeat(8 * 1024 * 1024));
        assertThat(check(large)).isEqualTo(64);
        assertThat(err.toString()).contains("8 MiB is the most");
        Path declaration = write("declaration.yaml", "#".repeat(1024 * 1024 + 1));
        assertThat(check(write("a.yaml", SheetText.scara().text()), "--declaration", declaration))
                .isEqualTo(64);
        assertThat(err.toString()).contains("declaration.yaml", "1 MiB is the most");
    }

    @Test
    void refusesWrongUsage() throws IOException {
        Path program = write("a.yaml", SheetText.scara().text());
        assertThat(run("check", program)).isEqualTo(64);
        assertThat(check()).isEqualTo(64);
        assertThat(check(program, "--reader", "guess")).isEqualTo(64);
        assertThat(check(program, "--reader", "phrasebook")).isEqualTo(64);
        assertThat(check(program, "--course-override-percent", "101")).isEqualTo(64);
        assertThat(check(program, "--course-override-percent", "x")).isEqualTo(64);
        assertThat(check(folder.resolve("none.yaml"))).isEqualTo(64);
        assertThat(check(program, "--phrasebook", write("book.yaml", "phrasebook: 2\n")))
                .isEqualTo(64);
        assertThat(run("check-all", "--cell", folder.resolve("cell.yaml"), folder.resolve("none")))
                .isEqualTo(64);
        assertThat(run("check-every")).isEqualTo(64);
    }

    @Test
    void choosesTheReaderByContentOrOption() throws IOException {
        Path book = write("book.yaml", BOOK);
        assertThat(check(write("a.yaml", SheetText.scara().text()), "--phrasebook", book))
                .isZero();
        assertThat(check(write("b.txt", "N1 G0 X1 Y1 Z1\n"))).isEqualTo(64);
        assertThat(err.toString()).contains("elbow");
        assertThat(check(write("c.txt", "fly\ngo home\n"), "--phrasebook", book))
                .isEqualTo(64);
        assertThat(err.toString()).contains("the move goes to \"home\"");
        assertThat(check(write("a.yaml", SheetText.scara().text()), "--reader", "iso-6983"))
                .isEqualTo(1);
        assertThat(out.toString()).contains("not understood: 1, 2");
    }

    @Test
    void checksAFolderOfHomework() throws IOException {
        SheetText sheet = SheetText.scara();
        write("homework/a.yaml", sheet.text());
        write("homework/.hidden", "x");
        assertThat(all()).isZero();
        write("homework/ann/b.yaml", sheet.without("part-kg").text());
        assertThat(all()).isEqualTo(2);
        write("homework/c.yaml", sheet.with("tool: G-02", "tool: G-99").text());
        assertThat(all()).isEqualTo(1);
        write("homework/d.yaml", "x");
        assertThat(all()).isEqualTo(64);
        assertThat(out.toString())
                .contains("a.yaml", "b.yaml", "tool-fitted: ", "line 1: ")
                .contains("4 files: 1 within, 1 outside, 1 not-checkable, 1 unreadable")
                .doesNotContain(".hidden", "cell.yaml");
    }

    private int all(Object... more) throws IOException {
        List<Object> arguments = new ArrayList<>(List.of(
                "check-all", "--cell", write("cell.yaml", CellText.scara().text()), folder.resolve("homework")));
        arguments.addAll(List.of(more));
        return run(arguments.toArray());
    }

    /** Characters from OWASP, CSV injection. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@a"})
    void keepsCellsFromBeingFormulas(String title) throws IOException {
        write(
                "homework/" + title + ".yaml",
                SheetText.scara().with("Peg and plate", "'" + title + "'").text());
        Path csv = folder.resolve("all.csv");
        assertThat(all("--csv", csv)).isZero();
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines.get(0)).startsWith("file,answer,check,line,why,title,reader");
        assertThat(lines.get(1)).startsWith("'" + title + ".yaml,within,,,,'" + title + ",motion-sheet,");
    }

    @Test
    void saysWhenTheTableCannotBeWritten() throws IOException {
        write("homework/a.yaml", SheetText.scara().text());
        assertThat(all("--csv", folder.resolve("no/such/all.csv"))).isEqualTo(64);
        assertThat(err.toString()).contains("cannot be written");
    }
}
