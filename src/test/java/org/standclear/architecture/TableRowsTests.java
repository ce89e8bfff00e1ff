package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** A row of a table in a template has a cell for every head, in their order: else values stand below another's name. */
class TableRowsTests {

    private static final List<TextFile> TEMPLATES = TextFile.below("src/main/resources/templates", ".html");

    /** A cell that is there only sometimes, or several times, is counted by tests of its own page. */
    private static boolean fixed(Element row) {
        return row.children().stream()
                .allMatch(cell -> cell.attributes().asList().stream()
                        .noneMatch(attribute -> attribute
                                .getKey()
                                .matches("th:(if|unless|each|replace|insert|remove|colspan)|sec:authorize")));
    }

    private static int width(Element row) {
        return row.children().stream()
                .mapToInt(cell -> cell.hasAttr("colspan") ? Integer.parseInt(cell.attr("colspan")) : 1)
                .sum();
    }

    private static List<String> faults(String name, String html) {
        List<String> faults = new ArrayList<>();
        for (Element table : Jsoup.parse(html).select("table:has(thead)")) {
            List<Element> heads = table.select("thead tr");
            if (heads.size() != 1 || !fixed(heads.get(0))) {
                continue;
            }
            for (Element row : table.select("tbody tr")) {
                if (fixed(row) && width(row) != width(heads.get(0))) {
                    faults.add(
                            name + ": " + width(row) + " cells below " + width(heads.get(0)) + " heads: " + row.text());
                }
                faults.addAll(labelFaults(name, heads.get(0), row));
            }
        }
        return faults;
    }

    /** On a phone a cell names its column itself. */
    private static List<String> labelFaults(String name, Element heads, Element row) {
        List<String> faults = new ArrayList<>();
        for (int i = 0; fixed(row) && i < Math.min(row.childrenSize(), heads.childrenSize()); i++) {
            Element cell = row.child(i);
            String head = heads.child(i).text();
            if (cell.hasAttr("data-label") && !cell.attr("data-label").equals(head)) {
                faults.add(name + ": a cell says " + cell.attr("data-label") + " below " + head);
            }
        }
        return faults;
    }

    @Test
    void standBelowTheirHeads() {
        assertThat(TEMPLATES.stream().flatMap(file -> faults(file.path().toString(), file.text()).stream()))
                .isEmpty();
    }

    @Test
    void findsARowThatIsShortAndACellThatIsMisnamed() {
        String table =
                "<table><thead><tr><th>Who</th><th>Missed</th><th>Wait</th></tr></thead><tbody><tr>%s</tr></tbody></table>";

        assertThat(faults("planted", table.formatted("<th>Noor</th><td data-label='Wait'>2 h</td>")))
                .hasSize(2)
                .anySatisfy(fault -> assertThat(fault).contains("2 cells below 3 heads"))
                .anySatisfy(fault -> assertThat(fault).contains("says Wait below Missed"));
        assertThat(faults("planted", table.formatted("<th>Noor</th><td data-label='Missed'>0</td><td>2 h</td>")))
                .isEmpty();
        assertThat(faults("planted", table.formatted("<td colspan='3'>Nobody</td>")))
                .isEmpty();
    }
}
