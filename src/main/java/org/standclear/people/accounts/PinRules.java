package org.standclear.people.accounts;

import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Which signing PINs are taken: six digits that are not among the first to be guessed. */
final class PinRules {

    private static final Pattern SIX_DIGITS = Pattern.compile("[0-9]{6}");

    /** Two digits, half a PIN or a third of it repeated, or read the same from behind. */
    private static final Pattern REPEATED =
            Pattern.compile("(..)\\1\\1|(...)\\2|(.)(.)(.)\\5\\4\\3|(.)\\6(.)\\7(.)\\8");

    /** Ways over the keys. */
    private static final Set<String> WALKED = Set.of(
            "147258", "258369", "369258", "258147", "147369", "369147", "159357", "159753", "357159", "753159",
            "789456", "456123", "321654", "654987", "987321", "102030", "246810", "135790", "147896", "789632",
            "741852", "852963");

    private PinRules() {}

    static Optional<String> refuse(String pin) {
        if (!SIX_DIGITS.matcher(pin).matches()) {
            return Optional.of("Use six digits.");
        }
        boolean easy = pin.chars().distinct().count() < 3
                || REPEATED.matcher(pin).matches()
                || isStaircase(pin)
                || WALKED.contains(pin);
        return easy ? Optional.of("That PIN is among the first to be guessed. Choose another.") : Optional.empty();
    }

    /** The same step from digit to digit, through zero too: 123456, 890123, 975319. */
    private static boolean isStaircase(String pin) {
        int step = Math.floorMod(pin.charAt(1) - pin.charAt(0), 10);
        for (int i = 2; i < pin.length(); i++) {
            if (Math.floorMod(pin.charAt(i) - pin.charAt(i - 1), 10) != step) {
                return false;
            }
        }
        return true;
    }
}
