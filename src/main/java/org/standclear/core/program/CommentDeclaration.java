package org.standclear.core.program;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.YamlReader;

/** Finds the declaration that stands in comments between {@code declaration} and {@code end declaration}. */
final class CommentDeclaration {

    private static final String BEGIN = "declaration";
    private static final String END = "end declaration";

    /** Most files have none: saves cutting a long text into lines. */
    private static final Pattern ANY = Pattern.compile("\\bdeclaration\\b", Pattern.CASE_INSENSITIVE);

    private CommentDeclaration() {}

    /** The declaration in comment lines that begin with the mark. */
    static Optional<StatedDeclaration> in(String text, String mark) {
        if (!ANY.matcher(text).find()) {
            return Optional.empty();
        }
        List<String> lines = text.lines().toList();
        int begin = find(lines, mark, BEGIN, 0);
        if (begin < 0) {
            return Optional.empty();
        }
        int end = find(lines, mark, END, begin + 1);
        if (end < 0) {
            throw new BadInputException(
                    begin + 1, "the declaration that begins here has no line \"" + mark + " " + END + "\"");
        }
        // empty lines in front keep the numbers of the lines
        StringBuilder block = new StringBuilder("\n".repeat(begin + 1));
        for (int i = begin + 1; i < end; i++) {
            String line = lines.get(i).stripLeading();
            if (!line.startsWith(mark)) {
                throw new BadInputException(i + 1, "a line of the declaration does not begin with \"" + mark + "\"");
            }
            String content = line.substring(mark.length());
            block.append(content.startsWith(" ") ? content.substring(1) : content)
                    .append('\n');
        }
        return Optional.of(DeclarationReader.stated(YamlReader.read(block.toString()), "the comment block"));
    }

    private static int find(List<String> lines, String mark, String words, int from) {
        for (int i = from; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.startsWith(mark)
                    && line.substring(mark.length())
                            .strip()
                            .toLowerCase(Locale.ROOT)
                            .equals(words)) {
                return i;
            }
        }
        return -1;
    }
}
