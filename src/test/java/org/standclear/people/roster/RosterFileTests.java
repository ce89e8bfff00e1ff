package org.standclear.people.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.platform.web.TableFile;

/** What a roster file may look like, and one clear line for what it may not. */
class RosterFileTests {

    private static final String HEADER = "login,name,course,section\n";

    private static List<String> problems(String text) {
        return RosterFile.of(text).problems();
    }

    @Test
    void readsOurOwnColumns() {
        assertThat(RosterFile.of(
                                "login,name,email,course,section,team\nNoor,Noor Candlewick,n@x.example,RBT 110,01,A\n")
                        .rows())
                .containsExactly(new RosterRow(2, "noor", "Noor Candlewick", "n@x.example", "RBT 110", "01", "A"));
    }

    @Test
    void readsTheColumnNamesOfOneRoster() {
        RosterFile file = RosterFile.of("""
                sourcedId;status;username;givenName;familyName;email;role;courseCode;classCode
                1;active;noor;Noor;Candlewick;;student;RBT 110;RBT 110-01
                2;active;ines;Ines;Quarryvale;;teacher;RBT 110;RBT 110-01
                3;tobedeleted;mateo;Mateo;Ironbark;;student;RBT 110;RBT 110-01
                """);

        assertThat(file.problems()).isEmpty();
        assertThat(file.rows()).containsExactly(new RosterRow(2, "noor", "Noor Candlewick", "", "RBT 110", "01", ""));
        assertThat(file.skipped()).isEqualTo(2);
    }

    @Test
    void takesTheCourseFromASectionThatNamesBoth() {
        assertThat(RosterFile.of("username\tname\tclassCode\nnoor\tNoor\tRBT 110-02\n")
                        .rows()
                        .get(0)
                        .sectionCode())
                .isEqualTo("RBT 110-02");
    }

    @Test
    void saysWhichColumnsAreMissing() {
        assertThat(problems("email,course\na@b.example,RBT 110\n"))
                .containsExactly("The first line has to name the columns; these are missing: login (or username), "
                        + "name (or givenName and familyName), section (or classCode).");
        assertThat(problems("")).hasSize(1);
        assertThat(problems(HEADER)).containsExactly("The file names no student.");
    }

    @Test
    void findsOneIdForTwoPeopleAndOnePersonTwice() {
        assertThat(problems(HEADER + "noor,Noor Candlewick,R,01\nnoor,Noor Other,R,02\n"))
                .singleElement()
                .asString()
                .startsWith("Lines 2 and 3: the sign-in name noor stands for two names");
        assertThat(problems(HEADER + "noor,Noor Candlewick,R,01\nnoor,Noor Candlewick,R,01\n"))
                .containsExactly("Lines 2 and 3 are the same person in the same section.");
        assertThat(problems(HEADER + "noor,Noor Candlewick,R,01\nnoor,Noor Candlewick,R,02\n"))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"=HYPERLINK(\"\"x\"\")", "+1", "-2", "@SUM(A1)", "\uFF1D1", "\uFF0B1", "\uFF0D1", "\uFF20A"})
    void refusesACellThatATableProgramWouldRun(String name) {
        assertThat(problems(HEADER + "noor,\"" + name + "\",R,01\n"))
                .singleElement()
                .asString()
                .contains("Line 2: a cell begins like a formula");
    }

    @ParameterizedTest
    @ValueSource(strings = {",R,01,=1", "Noor,=R,01,A", "Noor,R,@1,A", "Noor,R,01,\uFF1D1"})
    void refusesAFormulaInAnyCellAndNamesHowThatBegins(String cells) {
        String sign = cells.codePoints()
                .filter(c -> "=@\uFF1D".indexOf(c) >= 0)
                .mapToObj(Character::toString)
                .findFirst()
                .orElseThrow();

        assertThat(problems("login,name,course,section,team\nnoor," + cells + "\n"))
                .containsExactly("Line 2: a cell begins like a formula (" + sign + "...); write it as text.");
    }

    @Test
    void refusesATeamOfSeveralLinesOrThatTurnsTheReading() {
        String head = "login,name,course,section,team\nnoor,Noor,R,01,";
        assertThat(problems(head + "\"A\nB\"\n"))
                .singleElement()
                .asString()
                .contains("the team: Leave out character 2");
        assertThat(problems(head + "A\u202EB\n")).singleElement().asString().contains("U+202E");
        assertThat(problems(head + "x".repeat(41) + "\n"))
                .singleElement()
                .asString()
                .contains("40 characters at most");
    }

    @Test
    void saysInOneShortLineThatACellOfAMegabyteIsTooLong() {
        String huge = "x".repeat(1 << 20);
        assertThat(problems(HEADER + huge + ",Noor,R,01\n" + "noor," + huge + ",R,01\n" + "wren,Wren,R," + huge + "\n"))
                .hasSize(3)
                .allSatisfy(line -> assertThat(line).startsWith("Line ").hasSizeLessThan(200));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void readsEveryKindOfLineEndQuotesAndABlankFirstLine(String end) {
        String text = end + "login;name;course;section" + end + "noor;\"Candlewick, \"\"Noor\"\"\";R;01" + end;

        assertThat(RosterFile.of(text).rows())
                .extracting(RosterRow::login, RosterRow::name)
                .containsExactly(tuple("noor", "Candlewick, \"Noor\""));
    }

    @Test
    void saysThatWindowsLettersAreNotUtf8AndKnowsUtf16WithoutAMark() {
        byte[] windows = (HEADER + "noor,Noor \u20AC,R,01\n").getBytes(Charset.forName("windows-1252"));
        assertThatThrownBy(() -> RosterText.of(windows)).hasMessageStartingWith("Line 2 is not UTF-8: byte 80");
        for (String wide : List.of("UTF-16LE", "UTF-16BE")) {
            byte[] unmarked = (HEADER + "noor,Noor,R,01\n").getBytes(Charset.forName(wide));
            assertThatThrownBy(() -> RosterText.of(unmarked))
                    .hasMessageStartingWith("The file is UTF-16 without a mark");
        }
    }

    @Test
    void keepsTheListOfWhatIsWrongShort() {
        String lines = IntStream.range(0, 500)
                .mapToObj(i -> "bad name " + i + ",X,R,01")
                .collect(Collectors.joining("\n"));

        assertThat(problems(HEADER + lines)).hasSize(13).last().isEqualTo("and 488 more.");
    }

    @Test
    void readsFiftyThousandLinesAndNotOneMore() {
        String lines = IntStream.range(0, 50_000)
                .mapToObj(i -> "s" + i + ",Student " + i + ",R,01")
                .collect(Collectors.joining("\n"));

        assertThat(RosterFile.of(HEADER + lines).rows()).hasSize(50_000);
        assertThat(problems(HEADER + lines + "\none.more,One More,R,01"))
                .containsExactly("The file has more than 50,000 lines. Send one course at a time.");
    }

    @Test
    void saysWhereAFileIsNotUtf8() {
        byte[] latin = (HEADER + "noor,Noor Größe,R,01\n").getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> RosterText.of(latin))
                .hasMessageStartingWith("Line 2 is not UTF-8: byte F6")
                .hasMessageEndingWith("Save the file as \"CSV UTF-8\" and send it again.");
        byte[] wide = "\uFEFFlogin".getBytes(Charset.forName("UTF-16LE"));
        assertThatThrownBy(() -> RosterText.of(wide)).hasMessageStartingWith("The file is UTF-16.");
        assertThat(RosterText.of("\uFEFFlogin".getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("login");
    }

    @Test
    void readsAFileAsTheApplicationWritesTables() throws Exception {
        MockHttpServletResponse written = new MockHttpServletResponse();
        PrintWriter lines = TableFile.begin(written, "roster.csv");
        lines.write(HEADER + "zoe,Zoë Łęcka,R,01\n");
        lines.flush();
        assertThat(RosterFile.of(RosterText.of(written.getContentAsByteArray())).rows())
                .singleElement()
                .asString()
                .contains("Zoë Łęcka");
    }

    @Test
    void saysThatAnUnclosedQuoteIsNoTable() {
        assertThat(problems(HEADER + "noor,\"Noor,R,01\n"))
                .singleElement()
                .asString()
                .startsWith("The file is not a CSV");
    }
}
