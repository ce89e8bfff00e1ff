package org.standclear.testing.browser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where pictures of screens go: into the documentation when asked for by {@code -Dpictures=true}, else under target. */
final class Pictures {

    private Pictures() {}

    static Path folder() {
        return Boolean.getBoolean("pictures") ? Path.of("docs", "images") : Path.of("target", "pictures");
    }

    static Path write(Path folder, String name, byte[] content) {
        try {
            return Files.write(Files.createDirectories(folder).resolve(name), content);
        } catch (IOException e) {
            throw new UncheckedIOException("picture " + name + " not written", e);
        }
    }
}
