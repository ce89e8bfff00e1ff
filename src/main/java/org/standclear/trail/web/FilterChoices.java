package org.standclear.trail.web;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.PrintedNames;

/** What the filter's lists offer: value and words, in order. */
record FilterChoices(Map<String, String> kinds, Map<String, String> people) {

    static FilterChoices of(List<String> kinds, List<PersonId> actors, PrintedNames names, RecordFilterForm form) {
        Map<String, String> people = new LinkedHashMap<>();
        people.put("", "anybody");
        actors.stream()
                .map(person -> Map.entry(person.toString(), names.of(person)))
                .sorted(Comparator.comparing(Map.Entry::getValue))
                .forEach(choice -> people.put(choice.getKey(), choice.getValue()));
        if (form.personId() != null) {
            people.putIfAbsent(form.person(), names.of(form.personId()));
        }
        return new FilterChoices(kinds(kinds), people);
    }

    private static Map<String, String> kinds(List<String> kinds) {
        TreeSet<String> features = new TreeSet<>();
        kinds.forEach(kind -> features.add(kind.substring(0, kind.indexOf('.') + 1)));
        features.remove("");
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "anything");
        for (String feature : features) {
            choices.put(feature, feature.substring(0, feature.length() - 1) + ": all");
            kinds.stream().filter(kind -> kind.startsWith(feature)).forEach(kind -> choices.put(kind, words(kind)));
        }
        return choices;
    }

    static String words(String kind) {
        return kind.replace(".", ": ").replace('-', ' ').replace('_', ' ');
    }
}
