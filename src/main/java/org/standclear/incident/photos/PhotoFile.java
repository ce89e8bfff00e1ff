package org.standclear.incident.photos;

import java.util.HexFormat;
import java.util.Optional;

/** What kind of picture a file is, by its first bytes; its name and what the browser calls it say nothing. */
enum PhotoFile {
    JPEG("ffd8ff"),
    PNG("89504e470d0a1a0a");

    private final String beginning;

    PhotoFile(String beginning) {
        this.beginning = beginning;
    }

    /** The kind; empty when it is neither. */
    static Optional<PhotoFile> of(byte[] file) {
        String hex = HexFormat.of().formatHex(file, 0, Math.min(file.length, 8));
        for (PhotoFile kind : values()) {
            if (hex.startsWith(kind.beginning)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }
}
