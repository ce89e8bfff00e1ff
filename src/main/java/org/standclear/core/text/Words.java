package org.standclear.core.text;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Small turns of phrase that messages share. */
public final class Words {

    private static final int LONGEST_QUOTE = 40;

    private Words() {}

    /** The text in quotes on one line, cut when long: it may be anything somebody wrote. */
    public static String quoted(String text) {
        String cut = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE) + "..." : text;
        StringBuilder line = new StringBuilder("\"");
        cut.codePoints()
                .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? '?' : c)
                .forEach(line::appendCodePoint);
        return line.append('"').toString();
    }

    /** "a, b or c". */
    public static String anyOf(Collection<String> names) {
        return joined(names, " or ");
    }

    /** "a, b and c". */
    public static String allOf(Collection<String> names) {
        return joined(names, " and ");
    }

    private static String joined(Collection<String> names, String last) {
        List<String> list = new ArrayList<>(names);
        if (list.size() < 2) {
            return String.join("", list);
        }
        return String.join(", ", list.subList(0, list.size() - 1)) + last + list.get(list.size() - 1);
    }

    /** The name that was probably meant. */
    public static Optional<String> near(String written, Collection<String> names) {
        if (written.length() > LONGEST_QUOTE) {
            return Optional.empty();
        }
        int most = 1 + written.length() / 4;
        return names.stream()
                .limit(1000)
                .filter(name -> Math.abs(name.length() - written.length()) <= most)
                .filter(name -> differences(written, name) <= most)
                .findFirst();
    }

    /** Letters to put in, take out or change (Levenshtein). */
    private static int differences(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
