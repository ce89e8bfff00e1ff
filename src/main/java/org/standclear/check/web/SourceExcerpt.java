package org.standclear.check.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.standclear.check.CheckWords;
import org.standclear.check.web.AnswerView.SourceLine;
import org.standclear.check.web.AnswerView.SourceView;
import org.standclear.core.text.VisibleLine;

/** The lines of a program that a page shows: all of a short one, else the beginning and the lines with findings. */
final class SourceExcerpt {

    private static final int SHOWN_AT_START = 400;
    private static final int SHOWN_AROUND = 2;
    private static final int FINDING_LINES = 100;
    private static final int LONGEST_LINE = 300;

    private SourceExcerpt() {}

    static SourceView of(String text, List<AnswerDocument.Finding> findings) {
        List<String> lines = text.lines().toList();
        Map<Integer, List<AnswerDocument.Finding>> byLine = byLine(findings);
        TreeSet<Integer> shown = shown(lines.size(), byLine);
        List<SourceLine> views = new ArrayList<>();
        int before = 0;
        for (int number : shown) {
            views.add(line(number, lines.get(number - 1), number > before + 1, byLine.get(number)));
            before = number;
        }
        int left = lines.size() - shown.size();
        return new SourceView(
                views,
                left == 0
                        ? null
                        : left + " of " + lines.size()
                                + " lines are not shown here. The file as it was uploaded has them all.");
    }

    private static Map<Integer, List<AnswerDocument.Finding>> byLine(List<AnswerDocument.Finding> findings) {
        Map<Integer, List<AnswerDocument.Finding>> byLine = new HashMap<>();
        for (AnswerDocument.Finding finding : findings) {
            if (finding.line() != null && !finding.outcome().equals("within")) {
                byLine.computeIfAbsent(finding.line(), line -> new ArrayList<>())
                        .add(finding);
            }
        }
        return byLine;
    }

    private static TreeSet<Integer> shown(int lines, Map<Integer, List<AnswerDocument.Finding>> byLine) {
        TreeSet<Integer> shown = new TreeSet<>();
        for (int i = 1; i <= Math.min(lines, SHOWN_AT_START); i++) {
            shown.add(i);
        }
        byLine.keySet().stream().sorted().limit(FINDING_LINES).forEach(line -> {
            for (int i = Math.max(1, line - SHOWN_AROUND); i <= Math.min(lines, line + SHOWN_AROUND); i++) {
                shown.add(i);
            }
        });
        return shown;
    }

    private static SourceLine line(
            int number, String text, boolean gap, @Nullable List<AnswerDocument.Finding> findings) {
        String seen = VisibleLine.packed(text);
        String shown = seen.length() > LONGEST_LINE ? seen.substring(0, LONGEST_LINE) + " …" : seen;
        if (findings == null) {
            return new SourceLine(number, shown, gap, null, null);
        }
        List<AnswerDocument.Finding> worstFirst = findings.stream()
                .sorted((a, b) -> CheckWords.rank(a.outcome()) - CheckWords.rank(b.outcome()))
                .toList();
        List<String> remarks = worstFirst.stream()
                .map(finding -> CheckWords.check(finding.check()) + ": " + CheckWords.outcome(finding.outcome()))
                .distinct()
                .toList();
        return new SourceLine(number, shown, gap, worstFirst.get(0).outcome(), String.join("; ", remarks));
    }
}
