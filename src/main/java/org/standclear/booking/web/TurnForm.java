package org.standclear.booking.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.core.allocation.Span;

/**
 * What somebody asks for in a window, as it was sent.
 *
 * @param can keys of the times at which the person can come
 * @param first key of the dearest time
 * @param second key of the second dearest
 */
record TurnForm(
        @Nullable String formToken,
        @Nullable String turns,
        @Nullable String assignment,
        @Nullable String tool,
        @Nullable String partner,
        @Nullable Boolean attends,
        @Nullable List<String> can,
        @Nullable String first,
        @Nullable String second) {

    static final TurnForm EMPTY = new TurnForm(null, "1", null, null, null, false, List.of(), null, null);

    /** The form of a request that was sent before. */
    static TurnForm of(TurnRequest request, @Nullable String partnerLogin, Map<String, Span> choices) {
        return new TurnForm(
                null,
                String.valueOf(request.turns()),
                request.assignment() == null ? "" : request.assignment().toString(),
                request.tool(),
                partnerLogin,
                request.attends(),
                choices.entrySet().stream()
                        .filter(choice -> request.canCome().stream().anyMatch(span -> span.holds(choice.getValue())))
                        .map(Map.Entry::getKey)
                        .toList(),
                key(request.wishes(), 0),
                key(request.wishes(), 1));
    }

    private static String key(List<Span> wishes, int rank) {
        return rank < wishes.size() ? wishes.get(rank).from().toString() : "";
    }

    /** Whether the person offers to stand at the e-stop of others. */
    public boolean offers() {
        return Boolean.TRUE.equals(attends);
    }

    /** The keys of the times that were chosen. */
    public List<String> chosen() {
        return can == null ? List.of() : can;
    }

    /** How many turns; none when that is no number, which then stands in the errors. */
    int turns(int most, Map<String, String> errors) {
        String text = turns == null ? "" : turns.strip();
        if (text.matches("[0-9]{1,2}") && Integer.parseInt(text) <= most) {
            return Integer.parseInt(text);
        }
        errors.put("turns", "Ask for 0 to " + most + " turns.");
        return 0;
    }

    /** The times that were chosen, those that touch joined to one; keys that the form does not offer are refused. */
    List<Span> canCome(Map<String, Span> choices, Map<String, String> errors) {
        List<Span> spans = new ArrayList<>();
        for (String key : chosen()) {
            Span span = choices.get(key);
            if (span == null) {
                errors.put("can", "Choose times from the list.");
                return List.of();
            }
            spans.add(span);
        }
        if (spans.isEmpty()) {
            errors.put("can", "Choose at least one time at which you can come.");
        }
        spans.sort((one, other) -> one.from().compareTo(other.from()));
        return joined(spans);
    }

    private static List<Span> joined(List<Span> spans) {
        List<Span> joined = new ArrayList<>();
        for (Span span : spans) {
            Span last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last != null && !last.until().isBefore(span.from())) {
                Instant until = last.until().isAfter(span.until()) ? last.until() : span.until();
                joined.set(joined.size() - 1, new Span(last.from(), until));
            } else {
                joined.add(span);
            }
        }
        return joined;
    }

    /** The wishes in order; each has to be among the times at which the person can come. */
    List<Span> wishes(Map<String, Span> choices, Map<String, String> errors) {
        List<Span> wishes = new ArrayList<>();
        for (String field : List.of("first", "second")) {
            String key = field.equals("first") ? first : second;
            if (key == null || key.isBlank()) {
                continue;
            }
            Span span = choices.get(key);
            if (span == null || !chosen().contains(key)) {
                errors.put(field, "Wish for a time at which you can come.");
            } else if (!wishes.contains(span)) {
                wishes.add(span);
            }
        }
        return wishes;
    }
}
