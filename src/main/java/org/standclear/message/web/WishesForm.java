package org.standclear.message.web;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.message.Messages.Wishes;

/** How somebody wants e-mail, as the form was sent. */
record WishesForm(
        @Nullable String formToken,
        @Nullable String address,
        @Nullable String on,
        @Nullable String quietFrom,
        @Nullable String quietUntil) {

    static WishesForm of(Wishes wishes) {
        return new WishesForm(
                null,
                wishes.address(),
                wishes.on() ? "true" : null,
                wishes.quietFrom().toString(),
                wishes.quietUntil().toString());
    }

    /** The wishes; empty when a time cannot be read, which is put with the errors. */
    Optional<Wishes> read(Map<String, String> errors) {
        Optional<LocalTime> from = time(quietFrom, "quietFrom", errors);
        Optional<LocalTime> until = time(quietUntil, "quietUntil", errors);
        if (from.isEmpty() || until.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Wishes(address == null ? "" : address, "true".equals(on), from.get(), until.get()));
    }

    private static Optional<LocalTime> time(@Nullable String text, String field, Map<String, String> errors) {
        try {
            return Optional.of(LocalTime.parse(text == null ? "" : text.strip()));
        } catch (DateTimeException notATime) {
            errors.put(field, "Write a time of day, as 21:00.");
            return Optional.empty();
        }
    }
}
