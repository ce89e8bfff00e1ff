package org.standclear.testing.browser;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.openqa.selenium.WebDriver;

/** Asks axe what stands in the way of people on the page as it is now, by the rules of WCAG 2.2 level AA. */
final class Accessibility {

    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");
    private static final Set<String> GRAVE = Set.of("serious", "critical");

    private Accessibility() {}

    static List<String> graveFindings(WebDriver driver) {
        // legacy mode stays in this window; the other one opens a second page, needed only for frames of other origins
        Results results = new AxeBuilder().withTags(RULES).setLegacyMode(true).analyze(driver);
        if (results.isErrored()) {
            throw new IllegalStateException("axe did not finish: " + results.getErrorMessage());
        }
        return results.getViolations().stream()
                .filter(rule -> GRAVE.contains(rule.getImpact()))
                .map(Accessibility::inWords)
                .toList();
    }

    private static String inWords(Rule rule) {
        String where = rule.getNodes().stream()
                .map(node -> node.getTarget() + " " + node.getHtml())
                .collect(Collectors.joining("; "));
        return rule.getId() + " (" + rule.getImpact() + "): " + rule.getHelp() + " at " + where;
    }
}
