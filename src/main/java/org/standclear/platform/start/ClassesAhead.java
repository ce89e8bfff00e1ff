package org.standclear.platform.start;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * Reads and verifies the classes of a start beside it, in the order in which it is going to ask for them. A class that is
 * not there any more is left out: whoever really needs it says so.
 */
public final class ClassesAhead {

    /** Written by {@code docs/deploy/list-classes.sh}; a list that is out of date only helps less. */
    static final String LIST = "classes-ahead.txt";

    private ClassesAhead() {}

    /** Begins, and returns at once. */
    public static void begin() {
        Thread thread = new Thread(() -> load(listed(), ClassesAhead.class.getClassLoader()), "classes-ahead");
        thread.setDaemon(true);
        thread.start();
    }

    static List<String> listed() {
        try (InputStream list = ClassesAhead.class.getResourceAsStream(LIST)) {
            return list == null
                    ? List.of()
                    : new BufferedReader(new InputStreamReader(list, UTF_8))
                            .lines()
                            .toList();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** How many of them there were. */
    static long load(List<String> names, ClassLoader loader) {
        return names.stream().filter(name -> isLoaded(name, loader)).count();
    }

    private static boolean isLoaded(String name, ClassLoader loader) {
        try {
            // asking for its constructors has it verified, too; nothing of it runs
            return Class.forName(name, false, loader).getDeclaredConstructors() != null;
        } catch (ClassNotFoundException | LinkageError notHere) {
            return false;
        }
    }
}
