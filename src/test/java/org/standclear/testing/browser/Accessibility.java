package org.standclear.testing.browser;

import com.deque.html.axecore.providers.EmbeddedResourceAxeProvider;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.openqa.selenium.JavascriptExecutor;

/** Asks axe what stands in the way of people on the page as it is now, by the rules of WCAG 2.2 level AA. */
final class Accessibility {

    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");
    private static final Set<String> GRAVE = Set.of("serious", "critical");

    /** What is in order is not told of element by element: nobody reads it, and it is most of what axe says. */
    private static final String ASK = """
            const done = arguments[arguments.length - 1];
            axe.run(document, {runOnly: {type: 'tag', values: arguments[0]}, resultTypes: ['violations']}).then(
                found => done({rules: found.passes.length + found.violations.length, found: found.violations.map(rule => ({
                    impact: rule.impact,
                    says: `${rule.id} (${rule.impact}): ${rule.help} at `
                        + rule.nodes.map(node => `${node.target} ${node.html}`).join('; ')
                }))}),
                broke => done({broke: String(broke)}));
            """;

    private Accessibility() {}

    static List<String> graveFindings(JavascriptExecutor page) {
        if (Boolean.TRUE.equals(page.executeScript("return typeof axe === 'undefined'"))) {
            page.executeScript(axe());
        }
        if (!(page.executeAsyncScript(ASK, RULES) instanceof Map<?, ?> answer)
                || !(answer.get("found") instanceof List<?> found)
                || !(answer.get("rules") instanceof Long rules)
                || rules == 0) {
            throw new IllegalStateException("axe did not finish");
        }
        return found.stream()
                .map(rule -> (Map<?, ?>) rule)
                .filter(rule -> GRAVE.contains(String.valueOf(rule.get("impact"))))
                .map(rule -> String.valueOf(rule.get("says")))
                .toList();
    }

    private static String axe() {
        try {
            return new EmbeddedResourceAxeProvider().getScript();
        } catch (Exception missing) {
            throw new IllegalStateException("axe is not among the libraries", missing);
        }
    }
}
