package org.standclear.people.accounts;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Which passwords are taken: long ones that are no part of the name and not among those tried first. */
public final class PasswordRules {

    /** NIST SP 800-63B-4, 3.1.1.2: length and a list of common values, no rules about kinds of characters. */
    private static final int SHORTEST = 12;

    private static final int LONGEST = 128;

    private static final Set<String> TRIED_FIRST = Set.of(
            "123456789012",
            "1234567890123",
            "passwordpassword",
            "password1234",
            "password12345",
            "password123456",
            "qwertyuiop12",
            "qwertyuiopasdf",
            "administrator",
            "adminadminadmin",
            "letmeinletmein",
            "iloveyouiloveyou",
            "correcthorsebatterystaple",
            "changemechangeme",
            "standclearstandclear");

    private PasswordRules() {}

    /** What is the matter with a password; empty when it can be taken. */
    public static Optional<String> refuse(String password, String login, String printedName) {
        if (password.length() < SHORTEST) {
            return Optional.of("Use " + SHORTEST + " characters or more; a sentence is fine.");
        }
        if (password.length() > LONGEST) {
            return Optional.of("Use " + LONGEST + " characters at most.");
        }
        if (password.codePoints().anyMatch(Character::isISOControl)) {
            return Optional.of("Leave out control characters; they cannot be typed everywhere.");
        }
        String plain = password.toLowerCase(Locale.ROOT).replaceAll("\\s", "");
        if (plain.codePoints().distinct().count() < 5 || TRIED_FIRST.contains(plain)) {
            return Optional.of("That one is among the first to be tried. Choose another.");
        }
        if (named(plain, login) || named(plain, printedName)) {
            return Optional.of("It is little more than the name. Choose one that does not contain it.");
        }
        return Optional.empty();
    }

    /** The form in which passwords are hashed and compared, so that two keyboards give the same one. */
    public static String normal(String password) {
        return Normalizer.normalize(password, Normalizer.Form.NFC);
    }

    private static boolean named(String plain, String name) {
        String inside = name.toLowerCase(Locale.ROOT).replaceAll("\\s", "");
        return inside.length() > 2 && plain.contains(inside) && plain.length() - inside.length() < SHORTEST - 4;
    }
}
