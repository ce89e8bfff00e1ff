package org.standclear.core.program.phrases;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.standclear.core.program.BranchWords;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.Words;
import org.standclear.core.text.YamlNode;

/** Reads the fields of a phrasebook. */
final class PhrasebookFields {

    private static final int MOST_PHRASES = 300;
    private static final int MOST_WORDS = 100;
    private static final List<String> FIELDS = List.of("phrasebook", "name", "ignore-case", "sections", "phrases");
    private static final List<String> PHRASE = List.of("pattern", "means", "units", "words", "fixed", "note");
    private static final Map<Part, Set<String>> OUR_WORDS = Map.of(
            Part.POWER, Set.of("reduced", "full"),
            Part.SHOULDER, BranchWords.SHOULDERS.keySet(),
            Part.ELBOW, PartValue.ELBOWS,
            Part.WRIST, BranchWords.WRISTS.keySet());

    private PhrasebookFields() {}

    static Phrasebook book(YamlNode.Mapping top) {
        Fields file = Fields.of(top, "a phrasebook", FIELDS);
        file.wholeNumber("phrasebook", 1, 1);
        String name = file.text("name");
        boolean ignoresCase = file.has("ignore-case") && file.flag("ignore-case");
        List<YamlNode> list = file.list("phrases");
        if (list.isEmpty() || list.size() > MOST_PHRASES) {
            throw new BadInputException(file.lineOf("phrases"), "phrases needs 1 to " + MOST_PHRASES + " phrases");
        }
        List<Phrase> phrases = new ArrayList<>();
        for (YamlNode node : list) {
            phrases.add(phrase(Fields.of(node, "a phrase", PHRASE), ignoresCase));
        }
        return new Phrasebook(
                name, phrases, file.has("sections") ? sections(file.node("sections"), ignoresCase) : null);
    }

    private static Phrasebook.Sections sections(YamlNode node, boolean ignoresCase) {
        Fields fields = Fields.of(node, "sections", List.of("begin", "end"));
        PhrasePattern begin = pattern(fields, "begin", ignoresCase);
        PhrasePattern end = pattern(fields, "end", ignoresCase);
        if (!begin.parts().equals(List.of(Part.SECTION)) || !end.parts().isEmpty()) {
            throw new BadInputException(
                    fields.line(), "begin needs the part section and nothing else, end needs no part");
        }
        return new Phrasebook.Sections(begin, end);
    }

    private static PhrasePattern pattern(Fields fields, String name, boolean ignoresCase) {
        if (!(fields.node(name) instanceof YamlNode.Scalar scalar) || scalar.isNull()) {
            throw new BadInputException(fields.lineOf(name), name + " needs a pattern");
        }
        return new PhrasePattern(scalar.text().strip(), ignoresCase, scalar.line());
    }

    private static Phrase phrase(Fields fields, boolean ignoresCase) {
        PhrasePattern pattern = pattern(fields, "pattern", ignoresCase);
        Meaning meaning = fields.choice("means", Meaning.byWord());
        if (fields.has("note")) {
            Fields.text(fields.node("note"), "note");
        }
        Map<Part, String> fixed = fixed(fields);
        List<Part> parts = new ArrayList<>(pattern.parts());
        parts.addAll(fixed.keySet());
        requireParts(meaning, parts, fields);
        return new Phrase(pattern, meaning, units(fields, parts), words(fields, parts), fixed);
    }

    private static void requireParts(Meaning meaning, List<Part> parts, Fields fields) {
        for (Part part : parts) {
            if (!meaning.mayHave(part)) {
                throw new BadInputException(
                        fields.line(), "a phrase that means " + meaning.word() + " has no part " + part.word());
            }
            if (parts.indexOf(part) != parts.lastIndexOf(part)) {
                throw new BadInputException(
                        fields.line(), part.word() + " stands in the pattern and is fixed; leave one out");
            }
        }
        if (meaning.isTwofold(parts)) {
            throw new BadInputException(
                    fields.line(),
                    "the phrase says a point in two ways, by its name, its place or its axis values; leave one of them out");
        }
        List<Part> missing = meaning.missing(parts);
        if (!missing.isEmpty()) {
            throw new BadInputException(
                    fields.line(),
                    "a phrase that means " + meaning.word() + " needs " + Words.allOf(words(missing)) + "; write {"
                            + missing.get(0).word() + "} in the pattern, or fix it");
        }
    }

    private static List<String> words(List<Part> parts) {
        return parts.stream().map(Part::word).toList();
    }

    private static Map<Part, String> fixed(Fields fields) {
        Map<Part, String> fixed = new EnumMap<>(Part.class);
        for (YamlNode.Entry entry : entries(fields, "fixed")) {
            Part part = part(entry.key());
            String value = Fields.text(entry.value(), part.word());
            String wrong = PartValue.wrong(part, value);
            if (wrong != null) {
                throw new BadInputException(entry.value().line(), wrong);
            }
            fixed.put(part, value);
        }
        return fixed;
    }

    private static Part part(YamlNode.Scalar key) {
        return Part.of(key.text())
                .orElseThrow(() -> new BadInputException(
                        key.line(),
                        Words.quoted(key.text()) + " is no part; parts are "
                                + Words.allOf(words(List.of(Part.values())))));
    }

    private static List<YamlNode.Entry> entries(Fields fields, String name) {
        if (!fields.has(name)) {
            return List.of();
        }
        if (fields.node(name) instanceof YamlNode.Mapping mapping
                && mapping.entries().size() <= MOST_WORDS) {
            return List.copyOf(mapping.entries().values());
        }
        throw new BadInputException(fields.lineOf(name), name + " needs names with values, " + MOST_WORDS + " at most");
    }

    private static Map<String, Double> units(Fields fields, List<Part> parts) {
        List<String> needed = parts.stream()
                .flatMap(part -> part.quantity().stream())
                .distinct()
                .toList();
        Map<String, Double> units = new HashMap<>();
        Fields given = fields.has("units") ? Fields.of(fields.node("units"), "units", needed) : null;
        for (String quantity : needed) {
            if (given == null || !given.has(quantity)) {
                throw new BadInputException(
                        fields.line(),
                        "the phrase has a " + quantity + " and does not say its unit; write units: {" + quantity + ": "
                                + Part.units(quantity).keySet().stream()
                                        .sorted()
                                        .findFirst()
                                        .orElse("") + "}");
            }
            units.put(quantity, given.choice(quantity, Part.units(quantity)));
        }
        return units;
    }

    private static Map<Part, Map<String, String>> words(Fields fields, List<Part> parts) {
        Map<Part, Map<String, String>> words = new EnumMap<>(Part.class);
        for (YamlNode.Entry entry : entries(fields, "words")) {
            Part part = part(entry.key());
            @Nullable Set<String> ours = OUR_WORDS.get(part);
            if (ours == null || !parts.contains(part) || !(entry.value() instanceof YamlNode.Mapping mapping)) {
                throw new BadInputException(
                        entry.key().line(),
                        "words needs names for the words of power, shoulder, elbow or wrist, if the phrase has them");
            }
            Map<String, String> named = new HashMap<>();
            for (YamlNode.Entry word : mapping.entries().values()) {
                String our = Fields.text(word.value(), part.word());
                if (!ours.contains(our)) {
                    throw new BadInputException(word.value().line(), PartValue.wrong(part, our) + "");
                }
                named.put(word.key().text(), our);
            }
            words.put(part, named);
        }
        return words;
    }
}
