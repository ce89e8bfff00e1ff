package org.standclear.core.program;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.YamlReader;

/** Finds the declaration that stands in comments between {@code declaration} and {@code end declaration}. */
public final class CommentDeclaration {

    private static final String BEGIN = "declaration";
    private static final String END = "end declaration";

    /** Most files have none: saves cutting a long text into lines. */
    private static final Pattern ANY = Pattern.compile("\\bdeclaration\\b", Pattern.CASE_INSENSITIVE);

    private CommentDeclaration() {}

    /** The declaration in comment lines that begin with the mark. */
    static Optional<StatedDeclaration> in(String text, String mark) {
        return in(text, line -> {
            String content = line.stripLeading();
            return content.startsWith(mark) ? Optional.of(content.substring(mark.length())) : Optional.empty();
        });
    }

    /** The declaration in the lines that are nothing but comment; the function tells the content of one that is. */
    public static Optional<StatedDeclaration> in(String text, Function<String, Optional<String>> comment) {
        if (!ANY.matcher(text).find()) {
            return Optional.empty();
        }
        return in(text.lines()
                .map(line -> line.isBlank() ? Optional.of("") : comment.apply(line))
                .toList());
    }

    /** The declaration in the contents of the comment lines; a line that is none is empty, a blank one has no content. */
    public static Optional<StatedDeclaration> in(List<Optional<String>> lines) {
        int begin = find(lines, BEGIN, 0);
        if (begin < 0) {
            return Optional.empty();
        }
        int end = find(lines, END, begin + 1);
        if (end < 0) {
            throw new BadInputException(
                    begin + 1, "the declaration that begins here has no comment line \"" + END + "\"");
        }
        // empty lines in front keep the numbers of the lines
        StringBuilder block = new StringBuilder("\n".repeat(begin + 1));
        for (int i = begin + 1; i < end; i++) {
            int number = i + 1;
            String content = lines.get(i)
                    .orElseThrow(() -> new BadInputException(
                            number,
                            "this line stands inside the declaration that begins on line " + (begin + 1)
                                    + " and is no comment; put it after \"" + END + "\", or write it as a comment"));
            block.append(content.startsWith(" ") ? content.substring(1) : content)
                    .append('\n');
        }
        return Optional.of(DeclarationReader.stated(YamlReader.read(block.toString()), "the comment block"));
    }

    private static int find(List<Optional<String>> lines, String words, int from) {
        for (int i = from; i < lines.size(); i++) {
            Optional<String> content = lines.get(i);
            if (content.isPresent()
                    && content.get().strip().toLowerCase(Locale.ROOT).equals(words)) {
                return i;
            }
        }
        return -1;
    }
}
