package org.standclear.signoff.records;

import java.security.SecureRandom;
import org.springframework.stereotype.Component;

/** Draws release codes: four characters that are hard to mix up when read out or seen from two metres. */
@Component
class ReleaseCodes {

    /** Without 0 O, 1 I L, 2 Z, 5 S, 8 B, U V. */
    static final String ALPHABET = "ACDEFGHJKMNPQRTWXY34679";

    private static final int LENGTH = 4;

    private final SecureRandom random = new SecureRandom();

    String next() {
        StringBuilder code = new StringBuilder(LENGTH);
        for (int i = 0; i < LENGTH; i++) {
            code.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        }
        return code.toString();
    }
}
