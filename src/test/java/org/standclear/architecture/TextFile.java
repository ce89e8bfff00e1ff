package org.standclear.architecture;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A file of the project with its text, as the rules read it. */
record TextFile(Path path, String text) {

    /** The files below a folder whose names end so; none when there is no such folder. */
    static List<TextFile> below(String folder, String ending) {
        Path root = Path.of(folder);
        if (!Files.isDirectory(root)) {
            return List.of();
        }
        try (Stream<Path> paths = Files.walk(root)) {
            return paths.filter(
                            path -> Files.isRegularFile(path) && path.toString().endsWith(ending))
                    .sorted()
                    .map(TextFile::read)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static TextFile read(Path path) {
        try {
            return new TextFile(path, Files.readString(path));
        } catch (IOException e) {
            throw new UncheckedIOException("not a text: " + path, e);
        }
    }

    String name() {
        return String.valueOf(path.getFileName());
    }

    String stem() {
        return name().replaceFirst("\\.[^.]*$", "");
    }

    List<String> lines() {
        return text.lines().toList();
    }
}
