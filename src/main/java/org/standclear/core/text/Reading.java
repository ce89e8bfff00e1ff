package org.standclear.core.text;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/** What came of reading a text: the thing that was read, or the one thing that is wrong with it. */
public sealed interface Reading<T> {

    /** The text is well-formed; this is what it says. */
    record Read<T>(T value) implements Reading<T> {}

    /** The text is refused; nothing of it may be kept. */
    record Refused<T>(BadInput why) implements Reading<T> {}

    /** Does the work and catches its {@link BadInputException}. */
    static <T> Reading<T> of(Supplier<T> work) {
        try {
            return new Read<>(work.get());
        } catch (BadInputException e) {
            return new Refused<>(e.badInput());
        }
    }

    /** What is wrong; empty when the text was read. */
    default Optional<BadInput> badInput() {
        return this instanceof Refused<T> refused ? Optional.of(refused.why()) : Optional.empty();
    }

    /** What was read; only to be asked when nothing is wrong. */
    default T value() {
        if (this instanceof Read<T> read) {
            return read.value();
        }
        throw new IllegalStateException(
                "refused: " + badInput().map(BadInput::sentence).orElse(""));
    }

    /** Goes on with what was read. */
    default <S> Reading<S> then(Function<T, Reading<S>> next) {
        return this instanceof Refused<T> refused ? new Refused<>(refused.why()) : next.apply(value());
    }
}
