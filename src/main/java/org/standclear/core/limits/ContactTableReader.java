package org.standclear.core.limits;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.cell.RegionFields;
import org.standclear.core.cell.RegionValues;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.Reading;
import org.standclear.core.text.YamlReader;

/** Reads a table of body regions (YAML, {@code contact-table: 1}), the shipped one or the college's own. */
public final class ContactTableReader {

    private static final List<String> FIELDS = List.of("contact-table", "name", "provenance", "rest", "regions");

    private ContactTableReader() {}

    /** The table that ships with the program. */
    public static ContactTable shipped() {
        return ShippedContactTable.TABLE;
    }

    /**
     * The table in the text. It names every region, so that none is left out by mistake, unless it says that the rest
     * is the shipped table's.
     */
    public static Reading<ContactTable> read(String text) {
        return Reading.of(() -> {
            Fields file = Fields.of(YamlReader.read(text), "a contact table", FIELDS);
            file.wholeNumber("contact-table", 1, 1);
            String name = file.text("name");
            String provenance = Fields.longText(file.node("provenance"), "provenance");
            Map<BodyRegion, RegionValues> regions = new EnumMap<>(BodyRegion.class);
            if (file.has("rest") && file.choice("rest", Map.of("shipped", true))) {
                regions.putAll(shipped().regions());
            }
            regions.putAll(RegionFields.of(file.node("regions")));
            for (BodyRegion region : BodyRegion.values()) {
                if (!regions.containsKey(region)) {
                    throw new BadInputException(
                            file.lineOf("regions"),
                            "the regions have no " + region.word()
                                    + "; it is needed, or write rest: shipped to take the rest from the shipped table");
                }
            }
            return new ContactTable(name, provenance, regions);
        });
    }
}
