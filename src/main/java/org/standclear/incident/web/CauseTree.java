package org.standclear.incident.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.Cause;
import org.standclear.incident.CauseBranch;

/** Lays the causes of an incident out as a tree: four branches, each cause below the one that it explains. */
final class CauseTree {

    private static final int DEEPEST = 6;

    private CauseTree() {}

    /** A branch with its causes, in the order in which they are read. */
    record CauseView(String branch, List<Line> lines) {}

    /** One cause; how far it is set in says what it explains. */
    record Line(String id, String words, int depth, boolean struck) {}

    static List<CauseView> of(List<Cause> causes) {
        return Arrays.stream(CauseBranch.values())
                .map(branch -> new CauseView(IncidentChoices.capital(branch.words()), lines(causes, branch)))
                .toList();
    }

    private static List<Line> lines(List<Cause> causes, CauseBranch branch) {
        List<Line> lines = new ArrayList<>();
        below(null, causes.stream().filter(cause -> cause.branch() == branch).toList(), 0, lines);
        return lines;
    }

    private static void below(@Nullable UUID parent, List<Cause> causes, int depth, List<Line> lines) {
        causes.stream().filter(cause -> Objects.equals(cause.parent(), parent)).forEach(cause -> {
            lines.add(new Line(cause.id().toString(), cause.words(), Math.min(depth, DEEPEST), cause.struck()));
            below(cause.id(), causes, depth + 1, lines);
        });
    }

    /** The causes that another one can explain, from id to words. */
    static Map<String, String> parents(List<Cause> causes) {
        Map<String, String> parents = new LinkedHashMap<>();
        parents.put("", "nothing yet: it stands at the root of its branch");
        causes.stream()
                .filter(cause -> !cause.struck())
                .forEach(cause ->
                        parents.put(cause.id().toString(), cause.branch().words() + ": " + shortened(cause.words())));
        return parents;
    }

    private static String shortened(String words) {
        return words.length() > 80 ? words.substring(0, 79) + "…" : words;
    }
}
