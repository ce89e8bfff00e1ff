package org.standclear.core.program.blocks;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.Posture;
import org.standclear.core.program.BranchWords;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;

/**
 * Which of several ways to reach its points a program in blocks means from here on. The standard has no words for it, so
 * a comment says it: {@code (posture elbow right)}, for six axes {@code (posture shoulder front, elbow up, wrist plain,
 * pitch 0, roll 180)}.
 *
 * @param branch null until a comment names one
 * @param pitch of the tool, deg
 * @param roll of the tool, deg
 */
record BlockPosture(@Nullable Branch branch, double pitch, double roll) {

    /** Until something else is said. */
    static final BlockPosture NONE = new BlockPosture(null, 0, 0);

    private static final String MARK = "posture";
    private static final String EXAMPLES =
            "(posture elbow right), or of six axes (posture shoulder front, elbow up, wrist plain, pitch 0, roll 180)";
    private static final List<String> NAMES = List.of("shoulder", "elbow", "wrist", "pitch", "roll");

    /** What the content of a comment says; empty when it is an ordinary comment. */
    static Optional<BlockPosture> in(String comment, int line) {
        String text = comment.strip().toLowerCase(Locale.ROOT);
        return text.equals(MARK) || text.startsWith(MARK + " ")
                ? Optional.of(of(text.substring(MARK.length()), line))
                : Optional.empty();
    }

    /** Whether a comment beside the words of a block looks like one: there it would be overlooked. */
    static boolean isBeside(String line) {
        return line.toLowerCase(Locale.ROOT).matches(".*[(;]\\s*" + MARK + "\\b.*");
    }

    /** What the words say, such as "elbow right". */
    static BlockPosture of(String words, int line) {
        Map<String, String> said = said(words, line);
        boolean isOfSix = said.size() > 1 || !said.containsKey("elbow");
        if (!isOfSix) {
            return new BlockPosture(named(said, "elbow", BranchWords.SIDES, line), 0, 0);
        }
        Posture posture = new Posture(
                named(said, "shoulder", BranchWords.SHOULDERS, line),
                named(said, "elbow", BranchWords.BENDS, line),
                named(said, "wrist", BranchWords.WRISTS, line));
        return new BlockPosture(posture, angle(said, "pitch", line), angle(said, "roll", line));
    }

    private static Map<String, String> said(String words, int line) {
        String[] all = words.strip().split("[ ,\\t]+", -1);
        Map<String, String> said = new LinkedHashMap<>();
        for (int i = 0; i + 1 < all.length; i += 2) {
            if (!NAMES.contains(all[i]) || said.put(all[i], all[i + 1]) != null) {
                throw notOne(words, line);
            }
        }
        if (said.isEmpty() || all.length % 2 == 1) {
            throw notOne(words, line);
        }
        return said;
    }

    private static BadInputException notOne(String words, int line) {
        return new BadInputException(line, "the posture is " + Words.quoted(words.strip()) + "; write " + EXAMPLES);
    }

    private static <T> T named(Map<String, String> said, String name, Map<String, T> words, int line) {
        String value = said.get(name);
        T meant = value == null ? null : words.get(value);
        if (meant == null) {
            throw new BadInputException(
                    line,
                    "the posture says " + name + " " + (value == null ? "nowhere" : Words.quoted(value)) + "; write "
                            + Words.anyOf(words.keySet().stream().sorted().toList()) + ", as in " + EXAMPLES);
        }
        return meant;
    }

    private static double angle(Map<String, String> said, String name, int line) {
        String value = said.getOrDefault(name, "0");
        boolean isNumber = value.length() <= 40 && value.matches("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)");
        double degrees = isNumber ? Double.parseDouble(value) : Double.NaN;
        if (!NumberRule.ANY.accepts(degrees)) {
            throw new BadInputException(
                    line, "the posture says " + name + " " + Words.quoted(value) + "; write " + NumberRule.ANY.words());
        }
        return degrees;
    }
}
