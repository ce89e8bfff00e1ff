package org.standclear.platform.numbers.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.numbers.LabNumbers;
import org.standclear.platform.numbers.NumberSet;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.StaleFormException;

/** What the pages of all rooms' numbers do; each room has its own address, its own words and its own rule who may. */
public final class NumbersPage<T> {

    private static final int SHOWN = 20;

    private final LabNumbers<T> numbers;
    private final NumberSet<T> set;
    private final Place place;
    private final Words words;
    private final Post post;

    /** For one room. */
    public NumbersPage(LabNumbers<T> numbers, NumberSet<T> set, Place place, Words words, Post post) {
        this.numbers = numbers;
        this.set = set;
        this.place = place;
        this.words = words;
        this.post = post;
    }

    /** Where it stands, and what it is called when somebody else was faster. */
    public record Place(String address, String view, String called) {}

    /** How people and instants are said. */
    public record Words(Function<PersonId, String> name, Function<Instant, String> time) {}

    /** Acts once for a form's token. */
    public interface Post {

        /** The address to go on at; empty when the act was refused. */
        Optional<String> run(@Nullable String token, Supplier<@Nullable String> act);
    }

    /** What the template shows. */
    public record Sheet(
            String address,
            boolean mayChange,
            String seen,
            List<Field> fields,
            String reason,
            Map<String, String> errors,
            Map<String, String> holding,
            List<Line> changes) {}

    /** A question of the form. */
    public record Field(String name, String label, String hint, String value) {}

    /** A line of the history. */
    public record Line(String when, String who, String numbers, String reason) {}

    /** The page. */
    public String show(boolean mayChange, Model model) {
        return page(NumbersForm.of(set, numbers.inForce()), mayChange, model);
    }

    /** Puts what was sent in force, or shows it again with what is wrong; for others there is no such form. */
    public String change(
            boolean mayChange, Map<String, String> fields, PersonId by, HttpServletResponse response, Model model) {
        if (!mayChange) {
            throw new NotFoundException("form");
        }
        NumbersForm<T> form = new NumbersForm<>(set, fields);
        Optional<String> done =
                form.read().flatMap(wanted -> post.run(fields.get("formToken"), () -> changed(form, wanted, by)));
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, true, model);
    }

    private @Nullable String changed(NumbersForm<T> form, T wanted, PersonId by) {
        // before it is read: of two at the same moment the second sees what the first did
        numbers.lock();
        T now = numbers.inForce();
        if (!set.line(now).equals(form.field("seen"))) {
            throw new StaleFormException(place.called(), place.address(), set.words(wanted), set.words(now));
        }
        if (now.equals(wanted)) {
            form.refuse("These are the numbers that hold already; nothing was changed.");
            return null;
        }
        numbers.change(wanted, by, form.reasonKept());
        return place.address();
    }

    private String page(NumbersForm<T> form, boolean mayChange, Model model) {
        List<Field> fields = set.numbers().stream()
                .map(one -> new Field(one.name(), one.label(), one.range().hint(), form.field(one.name())))
                .toList();
        List<Line> changes = numbers.changes(SHOWN).stream()
                .map(change -> new Line(
                        words.time().apply(change.at()),
                        words.name().apply(change.by()),
                        line(change.settings()),
                        change.reason()))
                .toList();
        model.addAttribute(
                "sheet",
                new Sheet(
                        place.address(),
                        mayChange,
                        form.field("seen"),
                        fields,
                        form.field("reason"),
                        form.errors(),
                        set.words(numbers.inForce()),
                        changes));
        return place.view();
    }

    private String line(T settings) {
        return set.words(settings).entrySet().stream()
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(", "));
    }
}
