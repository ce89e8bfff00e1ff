package org.standclear.platform.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ClassesAheadTests {

    private static boolean begun;

    /** Would be noticed if it were run. */
    private static final class Listed {

        static {
            begun = true;
        }
    }

    @Test
    void loadsWithoutRunning() {
        assertThat(ClassesAhead.load(List.of(Listed.class.getName()), getClass().getClassLoader()))
                .isEqualTo(1);
        assertThat(begun).isFalse();
    }

    @Test
    void leavesOutWhatIsNotThere() {
        List<String> names = List.of("org.standclear.NotThere", "", "java.util.List");

        assertThat(ClassesAhead.load(names, getClass().getClassLoader())).isEqualTo(1);
    }

    /** A list that is much out of date would be work for nothing. */
    @Test
    void mostOfWhatIsListedIsThere() {
        List<String> names = ClassesAhead.listed();

        assertThat(names).hasSizeGreaterThan(5_000);
        assertThat(names.stream().filter(ClassesAheadTests::isThere).count())
                .as("else make the list anew with docs/deploy/list-classes.sh")
                .isGreaterThan(names.size() * 9L / 10);
    }

    private static boolean isThere(String name) {
        return ClassesAheadTests.class.getClassLoader().getResource(name.replace('.', '/') + ".class") != null;
    }
}
