package org.standclear.core.limits;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The table that ships beside this class: a part of the program, not of the outside world. */
final class ShippedContactTable {

    static final ContactTable TABLE = ContactTableReader.read(text()).value();

    private static final String NAME = "contact-table.yaml";

    private ShippedContactTable() {}

    private static String text() {
        try (InputStream in = ShippedContactTable.class.getResourceAsStream(NAME)) {
            if (in == null) {
                throw new IllegalStateException("the program has no " + NAME);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
