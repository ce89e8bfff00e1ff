package org.standclear.core.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** One mapping of a file, read field by field; a field that nobody asked for is refused at once. */
public final class Fields {

    /** The longest name, code or title. */
    public static final int LONGEST_TEXT = 200;

    private final YamlNode.Mapping mapping;
    private final String what;

    private Fields(YamlNode.Mapping mapping, String what) {
        this.mapping = mapping;
        this.what = what;
    }

    /**
     * The fields of a mapping.
     *
     * @param what it is, with its article: "a step"
     * @param known the names it may have
     */
    public static Fields of(YamlNode node, String what, List<String> known) {
        if (!(node instanceof YamlNode.Mapping mapping)) {
            throw new BadInputException(
                    node.line(),
                    what + " needs named fields here: "
                            + Words.allOf(known.stream().limit(4).toList()));
        }
        for (YamlNode.Entry entry : mapping.entries().values()) {
            if (!known.contains(entry.key().text())) {
                throw unknown(entry.key(), what, known);
            }
        }
        return new Fields(mapping, what);
    }

    private static BadInputException unknown(YamlNode.Scalar key, String what, List<String> known) {
        String advice = Words.near(key.text(), known)
                .map(name -> "did you mean " + name + "?")
                .orElse("it may have " + Words.allOf(known));
        return new BadInputException(
                key.line(), Words.quoted(key.text()) + " is not a field of " + what + "; " + advice);
    }

    /** The line on which the mapping begins. */
    public int line() {
        return mapping.line();
    }

    /** Whether the field is there. */
    public boolean has(String name) {
        return mapping.entries().containsKey(name);
    }

    /** The line of the field's name; of the mapping when the field is not there. */
    public int lineOf(String name) {
        YamlNode.Entry entry = mapping.entries().get(name);
        return entry == null ? line() : entry.key().line();
    }

    /** The field's value, whatever it is. */
    public YamlNode node(String name) {
        YamlNode.Entry entry = mapping.entries().get(name);
        if (entry == null) {
            throw new BadInputException(line(), what + " has no " + name + "; it is needed");
        }
        return entry.value();
    }

    /** A number. */
    public double number(String name, NumberRule rule) {
        return number(node(name), name, rule);
    }

    /** A number, or null when the field is left out. */
    public @Nullable Double numberIfGiven(String name, NumberRule rule) {
        return has(name) ? Double.valueOf(number(name, rule)) : null;
    }

    /** A number, or what counts when the field is left out. */
    public double numberOr(String name, NumberRule rule, double otherwise) {
        return has(name) ? number(name, rule) : otherwise;
    }

    /** As many numbers as asked for. */
    public List<Double> numbers(String name, int count, NumberRule rule) {
        YamlNode node = node(name);
        if (!(node instanceof YamlNode.Sequence sequence) || sequence.items().size() != count) {
            throw new BadInputException(
                    node.line(),
                    name + " needs " + count + " numbers in brackets, such as [" + "0, ".repeat(count - 1) + "0]");
        }
        List<Double> numbers = new ArrayList<>();
        sequence.items().forEach(item -> numbers.add(number(item, name, rule)));
        return List.copyOf(numbers);
    }

    private static double number(YamlNode node, String name, NumberRule rule) {
        if (!(node instanceof YamlNode.Scalar scalar) || scalar.isNull()) {
            throw new BadInputException(node.line(), name + " has no number; write " + rule.words());
        }
        OptionalDouble value = scalar.plain() ? CoreNumbers.parse(scalar.text()) : OptionalDouble.empty();
        if (value.isEmpty()) {
            String quotes = scalar.plain() ? "" : " without quotes";
            throw new BadInputException(
                    scalar.line(), name + " is " + Words.quoted(scalar.text()) + "; write " + rule.words() + quotes);
        }
        if (!rule.accepts(value.getAsDouble())) {
            throw new BadInputException(
                    scalar.line(), name + " is " + Words.quoted(scalar.text()) + "; write " + rule.words());
        }
        return value.getAsDouble();
    }

    /** A whole number between the two, both included. */
    public int wholeNumber(String name, int least, int most) {
        return wholeNumber(name, least, most, "");
    }

    /** A whole number between the two, both included; {@code or} says what else the field may be. */
    public int wholeNumber(String name, int least, int most, String or) {
        String between = least == most ? Integer.toString(least) : "a whole number from " + least + " to " + most;
        if (node(name) instanceof YamlNode.Scalar scalar && scalar.plain() && CoreNumbers.isWhole(scalar.text())) {
            double value = Double.parseDouble(scalar.text());
            if (value >= least && value <= most) {
                return (int) value;
            }
        }
        throw new BadInputException(node(name).line(), (name + " needs " + between + " " + or).strip());
    }

    /** A text of one line, not empty. */
    public String text(String name) {
        return text(node(name), name);
    }

    /** A text of one line, or null when the field is left out. */
    public @Nullable String textIfGiven(String name) {
        return has(name) ? text(name) : null;
    }

    /** A text of one line from any value; {@code what} says what it is for. */
    public static String text(YamlNode node, String what) {
        return text(node, what, LONGEST_TEXT);
    }

    /** A text of one line from any value that may be a few sentences. */
    public static String longText(YamlNode node, String what) {
        return text(node, what, 10 * LONGEST_TEXT);
    }

    private static String text(YamlNode node, String what, int longest) {
        if (!(node instanceof YamlNode.Scalar scalar) || scalar.isNull()) {
            throw new BadInputException(node.line(), what + " needs a text");
        }
        String text = scalar.text().strip();
        if (text.isEmpty() || text.length() > longest) {
            throw new BadInputException(node.line(), what + " needs a text of 1 to " + longest + " characters");
        }
        if (!text.codePoints().allMatch(Fields::isShown)) {
            throw new BadInputException(
                    node.line(), what + " holds a line break or an invisible character; write plain text on one line");
        }
        return text;
    }

    private static boolean isShown(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }

    /** One of the named choices. */
    public <C> C choice(String name, Map<String, C> choices) {
        if (node(name) instanceof YamlNode.Scalar scalar) {
            C chosen = choices.get(scalar.text());
            if (chosen != null) {
                return chosen;
            }
        }
        throw new BadInputException(
                node(name).line(),
                name + " needs "
                        + Words.anyOf(choices.keySet().stream().sorted().toList()));
    }

    /** True or false. */
    public boolean flag(String name) {
        if (node(name) instanceof YamlNode.Scalar scalar && scalar.plain()) {
            switch (scalar.text()) {
                case "true", "True", "TRUE" -> {
                    return true;
                }
                case "false", "False", "FALSE" -> {
                    return false;
                }
                default -> {}
            }
        }
        throw new BadInputException(node(name).line(), name + " needs true or false");
    }

    /** The values of a list, in order. */
    public List<YamlNode> list(String name) {
        if (node(name) instanceof YamlNode.Sequence sequence) {
            return sequence.items();
        }
        throw new BadInputException(node(name).line(), name + " needs a list");
    }
}
