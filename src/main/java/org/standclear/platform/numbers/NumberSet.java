package org.standclear.platform.numbers;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The numbers of one room: they hold and change together.
 *
 * @param table with a row for each change: {@code lab_id}, {@code number}, a column for each of the numbers, by whom, when, why
 * @param values the numbers of the settings, in their order
 * @param made settings of numbers in their order
 * @param defaults what holds until somebody changes it
 */
public record NumberSet<T>(
        String table,
        List<LabNumber> numbers,
        Function<T, List<Integer>> values,
        Function<List<Integer>, T> made,
        T defaults) {

    public NumberSet {
        numbers = List.copyOf(numbers);
        if (values.apply(defaults).size() != numbers.size()) {
            throw new IllegalArgumentException("each number needs a value");
        }
    }

    /** All numbers in one line, to see whether somebody changed one meanwhile. */
    public String line(T settings) {
        return values.apply(settings).stream().map(String::valueOf).collect(Collectors.joining(" "));
    }

    /** Each number by its short name, as people read it. */
    public Map<String, String> words(T settings) {
        Map<String, String> words = new LinkedHashMap<>();
        List<Integer> all = values.apply(settings);
        for (int i = 0; i < numbers.size(); i++) {
            LabNumber.Said said = numbers.get(i).said();
            words.put(said.name(), said.value(all.get(i)));
        }
        return words;
    }
}
