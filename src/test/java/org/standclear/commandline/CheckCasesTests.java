package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The worked cases, through the command line. */
class CheckCasesTests {

    private static final Path CASES = Path.of("src", "test", "resources", "check-cases");

    static List<Path> cases() throws Exception {
        try (Stream<Path> folders = Files.list(CASES)) {
            return folders.filter(Files::isDirectory).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void answersAsTheOtherProgramExpects(Path folder) throws Exception {
        assertThat(CheckCase.run(folder).differences()).isEmpty();
    }

    @Test
    void hasAllCases() throws Exception {
        assertThat(cases()).hasSizeGreaterThanOrEqualTo(25);
    }
}
