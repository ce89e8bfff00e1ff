package org.standclear.incident.records;

import java.security.SecureRandom;
import java.util.Locale;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.platform.digest.Sha256;

/** Receipts for reports without a name: twelve characters that are hard to mix up, kept only as their hash. */
@Component
class Receipts {

    /** Without 0 O, 1 I L, 2 Z, 5 S, 8 B, U V; 23 characters, so twelve of them are worth 54 bits. */
    private static final String ALPHABET = "ACDEFGHJKMNPQRTWXY34679";

    private static final int LENGTH = 12;
    private static final int GROUP = 4;

    private final SecureRandom random = new SecureRandom();

    /** A new one, as it is shown: three groups of four. */
    String next() {
        StringBuilder receipt = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            receipt.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        }
        return shown(receipt.toString());
    }

    /** The one that a form carried, as it is shown, unless it is none or somebody has it; then a new one. */
    String usable(@Nullable String carried, Predicate<String> taken) {
        String plain = carried == null ? "" : plain(carried);
        boolean good = plain.length() == LENGTH && plain.chars().allMatch(one -> ALPHABET.indexOf(one) >= 0);
        return good && !taken.test(stored(plain)) ? shown(plain) : next();
    }

    private static String shown(String plain) {
        return plain.substring(0, GROUP) + "-" + plain.substring(GROUP, 2 * GROUP) + "-" + plain.substring(2 * GROUP);
    }

    private static String plain(String receipt) {
        return receipt.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
    }

    /** What is kept of it; case, spaces and hyphens do not count. */
    static String stored(String receipt) {
        return Sha256.of(plain(receipt));
    }
}
