package org.standclear.incident.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What changed from one text to the next, word by word, by their longest common sequence of words. */
public final class WordChanges {

    private WordChanges() {}

    /** Words that follow each other and share a fate. */
    public record Piece(Fate fate, String words) {}

    /** What became of words. */
    public enum Fate {
        STAYED,
        REMOVED,
        ADDED
    }

    /** The pieces in the order in which they are read, what was removed before what came in its place. */
    public static List<Piece> between(String before, String after) {
        List<String> old = words(before);
        List<String> now = words(after);
        int[][] common = common(old, now);
        Pieces pieces = new Pieces();
        int i = 0;
        int j = 0;
        while (i < old.size() || j < now.size()) {
            if (i < old.size() && j < now.size() && old.get(i).equals(now.get(j))) {
                pieces.add(Fate.STAYED, now.get(j));
                i++;
                j++;
            } else if (i < old.size() && (j == now.size() || common[i + 1][j] >= common[i][j + 1])) {
                pieces.add(Fate.REMOVED, old.get(i));
                i++;
            } else {
                pieces.add(Fate.ADDED, now.get(j));
                j++;
            }
        }
        return pieces.all();
    }

    private static List<String> words(String text) {
        return Arrays.stream(text.strip().split("\\s+"))
                .filter(word -> !word.isEmpty())
                .toList();
    }

    /** How many words the rests from i and from j have in common, at most. */
    private static int[][] common(List<String> old, List<String> now) {
        int[][] common = new int[old.size() + 1][now.size() + 1];
        for (int i = old.size() - 1; i >= 0; i--) {
            for (int j = now.size() - 1; j >= 0; j--) {
                common[i][j] = old.get(i).equals(now.get(j))
                        ? common[i + 1][j + 1] + 1
                        : Math.max(common[i + 1][j], common[i][j + 1]);
            }
        }
        return common;
    }

    /** Pieces as they come, neighbours of one fate joined. */
    private static final class Pieces {

        private final List<Piece> all = new ArrayList<>();

        void add(Fate fate, String word) {
            Piece last = all.isEmpty() ? null : all.get(all.size() - 1);
            if (last != null && last.fate() == fate) {
                all.set(all.size() - 1, new Piece(fate, last.words() + " " + word));
            } else {
                all.add(new Piece(fate, word));
            }
        }

        List<Piece> all() {
            return List.copyOf(all);
        }
    }
}
