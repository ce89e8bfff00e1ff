package org.standclear.platform.ids;

import com.fasterxml.uuid.Generators;
import com.fasterxml.uuid.impl.TimeBasedEpochGenerator;
import java.util.UUID;
import java.util.regex.Pattern;

/** What all ids have in common: a UUID of version 7 (RFC 9562), so that rows made later sort later. */
public interface Id {

    /** The bare value, as stored. */
    UUID value();

    /** A new bare value. */
    static UUID newValue() {
        return Generator.SHARED.generate();
    }

    /**
     * The bare value that a text writes in full. One id has one spelling: {@link UUID#fromString} takes others too, with
     * zeros left out, and who looks through a request for ids would not see those.
     *
     * @throws IllegalArgumentException when it is none
     */
    static UUID parse(String text) {
        if (!Generator.SPELLING.matcher(text).matches()) {
            throw new IllegalArgumentException("not an id");
        }
        return UUID.fromString(text);
    }

    /** Holds the one generator of this process. */
    final class Generator {
        private static final Pattern SPELLING =
                Pattern.compile("[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}");
        private static final TimeBasedEpochGenerator SHARED = Generators.timeBasedEpochGenerator();

        private Generator() {}
    }
}
