package org.standclear.signoff.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.standclear.cell.Cell;
import org.standclear.check.CheckWords;
import org.standclear.check.StoredAnswer;
import org.standclear.signoff.Waivers.Blocking;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Says an answer of the check in one line: the verdict, and what stands in the way first. */
public final class AnswerLine {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private AnswerLine() {}

    /** "Outside limits on Avocet version 7: the tool point reaches 312 mm/s, 250 mm/s at most." */
    public static String of(StoredAnswer answer, Cell cell) {
        String verdict = answer.verdict().words();
        String head = Character.toUpperCase(verdict.charAt(0)) + verdict.substring(1) + " on " + cell.name()
                + " version " + answer.cellVersion();
        List<String> reasons = answer.verdict() == StoredAnswer.Verdict.WITHIN ? List.of() : reasons(answer);
        return reasons.isEmpty() ? head + "." : head + ": " + reasons.get(0);
    }

    /** What the findings that block say, those outside first. */
    private static List<String> reasons(StoredAnswer answer) {
        List<String> outside = new ArrayList<>();
        List<String> notCheckable = new ArrayList<>();
        for (JsonNode finding : findings(answer)) {
            String says = finding.path("says").asString("");
            switch (finding.path("outcome").asString("")) {
                case "outside" -> outside.add(says);
                case "not-checkable" -> notCheckable.add(says);
                default -> {}
            }
        }
        outside.addAll(notCheckable);
        return outside;
    }

    /**
     * The findings that keep it from being within limits.
     *
     * @param advised checks that are advised only, and so never block
     */
    public static List<Blocking> blocking(StoredAnswer answer, Set<String> advised) {
        List<Blocking> blocking = new ArrayList<>();
        for (JsonNode finding : findings(answer)) {
            String outcome = finding.path("outcome").asString("");
            String check = finding.path("check").asString("");
            boolean blocks = outcome.equals("outside") || outcome.equals("not-checkable") && !advised.contains(check);
            if (blocks) {
                blocking.add(
                        new Blocking(check, outcome, finding.path("says").asString(""), WaiverRules.isHard(check)));
            }
        }
        return blocking;
    }

    /** What could not be checked, required or advised: "Contact: the tool has edges ...". */
    public static List<String> notChecked(StoredAnswer answer) {
        String outcome = StoredAnswer.Verdict.NOT_CHECKABLE.mark();
        // most answers have none, and a long program's answer takes its time to be read
        if (!answer.json().contains(outcome)) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        for (JsonNode finding : findings(answer)) {
            if (finding.path("outcome").asString("").equals(outcome)) {
                lines.add(CheckWords.check(finding.path("check").asString("")) + ": "
                        + finding.path("says").asString(""));
            }
        }
        return lines;
    }

    private static JsonNode findings(StoredAnswer answer) {
        try {
            return JSON.readTree(answer.json()).path("findings");
        } catch (JacksonException notJson) {
            throw new IllegalStateException("answer " + answer.id() + " is not JSON", notJson);
        }
    }
}
