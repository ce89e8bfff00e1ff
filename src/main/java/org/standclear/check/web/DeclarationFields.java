package org.standclear.check.web;

import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The declaration as it was typed into the form, one field each; written out as the file would say it. */
record DeclarationFields(
        @Nullable String power,
        @Nullable String overridePercent,
        @Nullable String maxToolSpeed,
        @Nullable String tool,
        @Nullable String part,
        @Nullable String partKg,
        @Nullable String loop,
        @Nullable String start) {

    private static final Pattern NUMBER = Pattern.compile("\\d{1,7}(\\.\\d{1,9})?");
    private static final Pattern PASSES = Pattern.compile("[1-9]\\d{0,5}");

    /** Whether nothing was typed. */
    boolean empty() {
        return blank(power)
                && blank(overridePercent)
                && blank(maxToolSpeed)
                && blank(tool)
                && blank(part)
                && blank(partKg)
                && blank(loop)
                && blank(start);
    }

    /** The declaration as YAML text; wrong values are named in the errors. */
    String asYaml(Map<String, String> errors) {
        StringBuilder yaml = new StringBuilder();
        power(yaml, errors);
        number(yaml, "override-percent", "overridePercent", overridePercent, errors);
        number(yaml, "max-tool-speed-mm-s", "maxToolSpeed", maxToolSpeed, errors);
        text(yaml, "tool", "tool", tool, errors);
        text(yaml, "part", "part", part, errors);
        number(yaml, "part-kg", "partKg", partKg, errors);
        loop(yaml, errors);
        text(yaml, "start", "start", start, errors);
        return yaml.toString();
    }

    private void power(StringBuilder yaml, Map<String, String> errors) {
        if (blank(power)) {
            return;
        }
        if (!"reduced".equals(power) && !"full".equals(power)) {
            errors.put("power", "Choose reduced or full power.");
        }
        yaml.append("power: ").append(power).append('\n');
    }

    private void loop(StringBuilder yaml, Map<String, String> errors) {
        if (blank(loop)) {
            return;
        }
        String typed = strip(loop);
        if (!typed.equals("forever") && !PASSES.matcher(typed).matches()) {
            errors.put("loop", "Type a whole number of passes from 1 up, or forever.");
        }
        yaml.append("loop: ").append(typed).append('\n');
    }

    private static void number(
            StringBuilder yaml, String key, String field, @Nullable String value, Map<String, String> errors) {
        if (blank(value)) {
            return;
        }
        String typed = strip(value);
        if (!NUMBER.matcher(typed).matches()) {
            errors.put(field, "Type a plain number, not below 0, with a point before the decimals.");
        }
        yaml.append(key).append(": ").append(typed).append('\n');
    }

    private static void text(
            StringBuilder yaml, String key, String field, @Nullable String value, Map<String, String> errors) {
        if (blank(value)) {
            return;
        }
        String typed = strip(value);
        if (typed.length() > 60 || typed.chars().anyMatch(Character::isISOControl)) {
            errors.put(field, "Use 60 readable characters at most.");
        }
        String quoted = typed.replace("\\", "\\\\").replace("\"", "\\\"");
        yaml.append(key).append(": \"").append(quoted).append("\"\n");
    }

    private static boolean blank(@Nullable String value) {
        return value == null || value.isBlank();
    }

    private static String strip(@Nullable String value) {
        return value == null ? "" : value.strip();
    }
}
