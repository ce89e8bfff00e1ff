package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Tool;
import org.standclear.core.geometry.Vector;
import org.standclear.platform.ids.PersonId;

/** The lab's register of tools, parts and fixtures: one person registers, another approves. */
public interface Equipment {

    /** All that is in use, by kind and code. */
    List<Item> all();

    /** The item of that id. */
    Optional<Item> find(UUID id);

    /** Whether the item is the one of its code that is in use; it stays so until the transaction around it ends. */
    boolean inUse(UUID id);

    /** Registers an item; one of the same code stays in use until this one is approved. */
    Kept register(Item item);

    /** Another person approves it; the one of the same code before it goes out of use. */
    Kept approve(UUID id, PersonId by);

    /** What the register holds. */
    enum Kind {
        TOOL("tool"),
        PART("part"),
        FIXTURE("fixture");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The kind as people say it. */
        public String words() {
            return words;
        }
    }

    /**
     * One item.
     *
     * @param offsetMm of a tool's point, as the robot shows it; empty for parts and fixtures
     * @param overhangMm how far a tool, or a part that is held, stands out from the tool point, or how high a fixture
     *     stands; null for parts and fixtures nobody has measured
     * @param edges whether it has sharp edges
     */
    record Item(
            UUID id,
            Kind kind,
            String code,
            String name,
            double massKg,
            List<Double> offsetMm,
            @Nullable Double overhangMm,
            boolean edges,
            PersonId registeredBy,
            Instant registeredAt,
            @Nullable PersonId approvedBy) {

        public Item {
            offsetMm = List.copyOf(offsetMm);
        }

        /** What the check would not count of a tool; empty when nothing, and for parts and fixtures. */
        public Optional<String> uncounted() {
            return kind != Kind.TOOL || offsetMm.isEmpty()
                    ? Optional.empty()
                    : new Tool(
                                    code,
                                    massKg,
                                    new Vector(offsetMm.get(0), offsetMm.get(1), offsetMm.get(2)),
                                    overhangMm == null ? 0 : overhangMm,
                                    edges)
                            .uncounted();
        }

        /** Whether a second person has looked at its data. */
        public boolean approved() {
            return approvedBy != null;
        }
    }

    /** What came of it. */
    sealed interface Kept {

        /** It is in the register. */
        record Registered(Item item) implements Kept {}

        /** It is not: says why, and with which field. */
        record Refused(String field, String says) implements Kept {}
    }
}
