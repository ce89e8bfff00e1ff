package org.standclear.cell;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.standclear.core.quantity.ShownNumber;

/** Writes another fitted tool into a cell file's text; what comes out is read and compared before anybody uses it. */
final class FittedToolText {

    private static final Pattern VERSION = Pattern.compile("(?m)^version:\\s*\\d+\\s*$");
    private static final Pattern FITTED = Pattern.compile("(?m)^fitted-tool:.*$");

    private FittedToolText() {}

    /** The file with the next version and the tool fitted; empty when its text is of another form. */
    static Optional<String> of(String file, int version, Equipment.Item tool) {
        Matcher number = VERSION.matcher(file);
        if (!number.find()) {
            return Optional.empty();
        }
        String next = number.replaceFirst("version: " + version);
        Matcher line = Pattern.compile("(?m)^  - \\{code: " + Pattern.quote(tool.code()) + ",[^\\n]*}[ ]*$")
                .matcher(next);
        String described = line(tool);
        if (line.find()) {
            next = line.replaceFirst(Matcher.quoteReplacement(described));
        } else if (FITTED.matcher(next).find()) {
            next = FITTED.matcher(next)
                    .replaceFirst(Matcher.quoteReplacement(described + "\nfitted-tool: " + tool.code()));
        }
        Matcher fitted = FITTED.matcher(next);
        return fitted.find()
                ? Optional.of(fitted.replaceFirst(Matcher.quoteReplacement("fitted-tool: " + tool.code())))
                : Optional.empty();
    }

    private static String line(Equipment.Item tool) {
        return "  - {code: " + tool.code() + ", mass-kg: " + number(tool.massKg()) + ", offset-mm: ["
                + number(tool.offsetMm().get(0)) + ", " + number(tool.offsetMm().get(1)) + ", "
                + number(tool.offsetMm().get(2)) + "], overhang-mm: "
                + number(tool.overhangMm() == null ? 0 : tool.overhangMm()) + ", edges: " + tool.edges() + "}";
    }

    private static String number(double value) {
        return ShownNumber.plain(value);
    }
}
