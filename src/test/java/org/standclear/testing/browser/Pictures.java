package org.standclear.testing.browser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where pictures of screens go. */
final class Pictures {

    private Pictures() {}

    /** For whoever looks into a test. */
    static Path folder() {
        return Path.of("target", "pictures");
    }

    /** Of the README's pictures: the documentation when asked for by {@code -Dpictures=true}. */
    static Path documentation() {
        return Boolean.getBoolean("pictures") ? Path.of("docs", "images") : folder();
    }

    static Path write(Path folder, String name, byte[] content) {
        try {
            return Files.write(Files.createDirectories(folder).resolve(name), content);
        } catch (IOException e) {
            throw new UncheckedIOException("picture " + name + " not written", e);
        }
    }
}
