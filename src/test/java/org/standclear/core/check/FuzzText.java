package org.standclear.core.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Makes texts out of samples: cut off, changed here and there, shuffled, or put together anew from their own pieces. */
final class FuzzText {

    /** A line that no reader knows: a text with it is never understood as a whole. */
    static final String UNKNOWN = "@@ no reader knows this line @@";

    private static final String[] NASTY = {
        "NaN",
        ".nan",
        ".inf",
        "-.inf",
        "1e400",
        "-1e400",
        "1e-400",
        "0x7fffffff",
        "0o777",
        "999999999999",
        "-0",
        "0",
        "1000000",
        "1000001",
        "-1000000",
        "0.0000001",
        "''",
        "\"",
        "{",
        "}",
        "[",
        "]",
        ":",
        "- ",
        "#",
        "(",
        ")",
        ";",
        "%",
        "&a",
        "*a",
        "!!int",
        "? ",
        "|",
        ">",
        "\t",
        "\u0000",
        "\uFEFF",
        "\u2028",
        "\uD800",
        "é",
        "\r",
        "\n",
        "---",
        "...",
        "null",
        "~",
        "true",
        "forever",
        "G2",
        "G3",
        "G91",
        "G20",
        "R-5",
        "I0 J0",
        "M30",
        "P1000000",
        "5 times over",
        "1000000 times over",
        "over and over",
        "and again",
        "now fetch-the-peg",
        "(a+)+$",
        "{point}",
        "{count}",
        ".*",
        "[[[[[[[[[[",
        "{a: {a: {a: {a: ",
        "((((((((((",
        "start: home",
        "180",
        "360",
        "-360",
        "1e5"
    };

    private final Random random;
    private final List<String> samples;

    FuzzText(Random random, List<String> samples) {
        this.random = random;
        this.samples = samples;
    }

    private String any() {
        return samples.get(random.nextInt(samples.size()));
    }

    String next() {
        return switch (random.nextInt(6)) {
            case 0 -> any();
            case 1 -> truncated(any());
            case 2 -> changed(any(), 1 + random.nextInt(4));
            case 3 -> shuffled(any());
            case 4 -> generated();
            default -> numbersChanged(any());
        };
    }

    /** The text with a line in it that no reader knows. */
    String withUnknownLine(String text) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        lines.add(random.nextInt(lines.size() + 1), UNKNOWN);
        return String.join("\n", lines) + "\n";
    }

    private String truncated(String text) {
        return text.substring(0, random.nextInt(text.length() + 1));
    }

    private String changed(String text, int times) {
        StringBuilder changed = new StringBuilder(text);
        for (int i = 0; i < times; i++) {
            int at = random.nextInt(changed.length() + 1);
            switch (random.nextInt(4)) {
                case 0 -> changed.insert(at, NASTY[random.nextInt(NASTY.length)]);
                case 1 -> changed.delete(at, Math.min(changed.length(), at + 1 + random.nextInt(12)));
                case 2 -> changed.insert(at, (char) random.nextInt(random.nextBoolean() ? 128 : 0x10000));
                default ->
                    changed.replace(
                            at, Math.min(changed.length(), at + 1), String.valueOf((char) (32 + random.nextInt(95))));
            }
        }
        return changed.toString();
    }

    private String shuffled(String text) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        for (int i = 0; i < 1 + random.nextInt(6) && !lines.isEmpty(); i++) {
            int from = random.nextInt(lines.size());
            String line = lines.get(from);
            switch (random.nextInt(4)) {
                case 0 -> lines.remove(from);
                case 1 -> lines.add(random.nextInt(lines.size() + 1), line);
                case 2 -> lines.set(from, "  " + line);
                default -> lines.add(random.nextInt(lines.size()), anyLine());
            }
        }
        return String.join("\n", lines) + "\n";
    }

    private String anyLine() {
        List<String> lines = any().lines().toList();
        return lines.get(random.nextInt(lines.size()));
    }

    /** The head of a sample, that is its declaration, and lines of all samples. */
    private String generated() {
        List<String> lines = any().lines().toList();
        int head = Math.min(lines.size(), random.nextInt(24));
        StringBuilder text = new StringBuilder();
        lines.subList(0, head).forEach(line -> text.append(line).append('\n'));
        int more = random.nextInt(40);
        for (int i = 0; i < more; i++) {
            text.append(random.nextInt(20) == 0 ? NASTY[random.nextInt(NASTY.length)] : anyLine())
                    .append('\n');
        }
        return text.toString();
    }

    private String numbersChanged(String text) {
        StringBuilder changed = new StringBuilder();
        for (String token : text.split("(?<=[^0-9.-])|(?=[^0-9.-])", -1)) {
            boolean isNumber = !token.isEmpty() && token.chars().anyMatch(Character::isDigit);
            changed.append(isNumber && random.nextInt(25) == 0 ? number() : token);
        }
        return changed.toString();
    }

    private String number() {
        return switch (random.nextInt(5)) {
            case 0 -> Integer.toString(random.nextInt(2_000_001) - 1_000_000);
            case 1 -> Double.toString(random.nextGaussian() * 100);
            case 2 -> Double.toString(random.nextDouble() * 1e-6);
            case 3 -> NASTY[random.nextInt(NASTY.length)];
            default -> Integer.toString(random.nextInt(400));
        };
    }
}
