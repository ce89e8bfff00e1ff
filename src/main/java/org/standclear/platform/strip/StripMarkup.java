package org.standclear.platform.strip;

import org.jspecify.annotations.Nullable;
import org.unbescape.html.HtmlEscape;

/**
 * Writes a strip: drawn, and as a table for those who cannot see the drawing.
 *
 * <p>A page has four strips of some twenty blocks each and is asked for by everybody in the lab every half minute; by the
 * template engine, element by element, they took two thirds of the page's time (docs/benchmarks.md). Every text and every
 * address passes {@link #text}, which escapes it.
 */
final class StripMarkup {

    /** Room for a strip of a full day, so that the text is not copied while it grows. */
    private static final int USUAL_LENGTH = 24_000;

    private final StringBuilder out = new StringBuilder(USUAL_LENGTH);
    private final Strip strip;
    private final String contextPath;
    private final String name;

    private StripMarkup(Strip strip, String contextPath) {
        this.strip = strip;
        this.contextPath = text(contextPath);
        this.name = text(strip.name());
    }

    /**
     * What stands inside the figure.
     *
     * @param contextPath what the application's addresses begin with, empty when it stands at the server's root
     */
    static String of(Strip strip, String contextPath) {
        StripMarkup markup = new StripMarkup(strip, contextPath);
        markup.drawing();
        markup.table();
        return markup.out.toString();
    }

    private static String text(String words) {
        return HtmlEscape.escapeHtml4Xml(words);
    }

    private StripMarkup put(String... parts) {
        for (String part : parts) {
            out.append(part);
        }
        return this;
    }

    private void drawing() {
        String key = text(strip.key());
        put("<div class=\"frame\" tabindex=\"0\" role=\"region\" aria-label=\"", name, ", drawn\">\n");
        put(
                "<svg width=\"100%\" height=\"86\" role=\"group\" aria-label=\"",
                name, "\">\n<defs><pattern id=\"hatch-", key);
        put("\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">");
        put(
                "<line class=\"hatch-line\" x1=\"0\" x2=\"0\" y1=\"0\" y2=\"7\"/></pattern></defs>\n<g aria-hidden=\"true\">");
        strip.hours().forEach(this::hour);
        put("</g>\n");
        strip.blocks().forEach(block -> block(block, key));
        if (strip.now() != null) {
            now(text(strip.now()));
        }
        put("</svg>\n</div>\n");
    }

    private void hour(HourMark hour) {
        String x = text(hour.x());
        put("<line class=\"tick\" x1=\"", x, "\" x2=\"", x, "\" y1=\"20\" y2=\"84\"/>");
        if (!hour.coveredBy(strip.now())) {
            put("<text class=\"hour\" x=\"", x, "\" y=\"13\" text-anchor=\"", hour.anchor(), "\">", text(hour.hour()));
            put("</text>");
        }
    }

    private void now(String x) {
        put("<g aria-hidden=\"true\"><line class=\"now\" x1=\"", x, "\" x2=\"", x, "\" y1=\"16\" y2=\"84\"/>");
        put("<text class=\"now-word\" x=\"", x, "\" y=\"13\" text-anchor=\"middle\">now</text></g>\n");
    }

    private void block(StripBlock block, String key) {
        String says = text(block.says());
        put("<a")
                .href(block.href())
                .put(" data-state=\"", text(block.state()), block.mine() ? "\" class=\"mine\"" : "\"");
        put(" aria-label=\"", says, "\"><title>", says, "</title><svg x=\"", text(block.x()), "\" y=\"24\" width=\"");
        put(text(block.width()), "\" height=\"58\" aria-hidden=\"true\">");
        put(
                "<rect class=\"block\" x=\"1\" y=\"1\" width=\"97%\" height=\"55\" rx=\"2\" fill=\"url(#hatch-",
                key, ")\"/>");
        put(sign(block.state()));
        line(block, block.firstShown(), "21");
        line(block, block.secondShown(), "39");
        put("</svg></a>\n");
    }

    private StripMarkup href(@Nullable String href) {
        return href == null ? this : put(" href=\"", contextPath, text(href), "\"");
    }

    private void line(StripBlock block, String shown, String y) {
        if (!shown.isEmpty()) {
            put(
                    "<text x=\"",
                    block.state().equals("released") ? "12" : "6",
                    "\" y=\"",
                    y,
                    "\">",
                    text(shown),
                    "</text>");
        }
    }

    /** What tells the states apart without their colour. */
    private static String sign(String state) {
        return switch (state) {
            case "checked" -> bar("1", "52", "33%", "4");
            case "ready" -> bar("1", "52", "66%", "4");
            case "released" -> bar("1", "1", "7", "55");
            case "finished", "closed-out" -> bar("1", "53", "97%", "3");
            case "stopped" -> bar("5", "44", "4", "9") + bar("12", "44", "4", "9");
            case "missed", "cancelled", "late-cancelled", "moved" ->
                "<line class=\"struck\" x1=\"2\" y1=\"55\" x2=\"96%\" y2=\"2\"/>";
            default -> "";
        };
    }

    private static String bar(String x, String y, String width, String height) {
        return "<rect class=\"bar\" x=\"" + x + "\" y=\"" + y + "\" width=\"" + width + "\" height=\"" + height
                + "\"/>";
    }

    private void table() {
        put("<details><summary>", name, " as a table</summary>\n");
        put("<div class=\"frame\" tabindex=\"0\" role=\"region\" aria-label=\"", name, " as a table\">\n");
        put(
                "<table class=\"table\" data-fold><thead><tr><th scope=\"col\">Time</th><th scope=\"col\">Who or what</th>");
        put("<th scope=\"col\">With</th><th scope=\"col\">State</th></tr></thead>\n<tbody>\n");
        strip.blocks().forEach(this::row);
        put("</tbody></table>\n</div>\n</details>\n");
    }

    private void row(StripBlock block) {
        put("<tr><td>");
        if (block.href() == null) {
            put(text(block.time()));
        } else {
            put("<a").href(block.href()).put(">", text(block.time()), "</a>");
        }
        put(
                "</td><td data-label=\"Who or what\">",
                text(block.first()),
                "</td><td data-label=\"With\">",
                text(block.second()),
                "</td><td data-label=\"State\"><span class=\"state\" data-state=\"");
        put(text(block.state()), "\">", text(block.words()), "</span></td></tr>\n");
    }
}
