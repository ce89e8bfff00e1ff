package org.standclear.platform.ids;

import com.fasterxml.uuid.Generators;
import com.fasterxml.uuid.impl.TimeBasedEpochGenerator;
import java.util.UUID;

/** What all ids have in common: a UUID of version 7 (RFC 9562), so that rows made later sort later. */
public interface Id {

    /** The bare value, as stored. */
    UUID value();

    /** A new bare value. */
    static UUID newValue() {
        return Generator.SHARED.generate();
    }

    /** Holds the one generator of this process. */
    final class Generator {
        private static final TimeBasedEpochGenerator SHARED = Generators.timeBasedEpochGenerator();

        private Generator() {}
    }
}
