package org.standclear.core.limits;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Reading;
import org.standclear.core.text.YamlNode;
import org.standclear.core.text.YamlReader;

/** Reads a table of body regions (YAML, {@code contact-table: 1}), the shipped one or the college's own. */
public final class ContactTableReader {

    private static final List<String> REGION_FIELDS =
            List.of("contact", "quasi-static-n", "stiffness-n-per-mm", "mass-kg");

    /** The table that ships, as public texts quote ISO/TS 15066:2016 Annex A; the standard itself was not read. */
    private static final String SHIPPED = """
            contact-table: 1
            provenance: "ISO/TS 15066:2016 Annex A as quoted in public texts. One source only: back-and-shoulders. \
            One text gives 4 kg for upper-arm-and-elbow and lower-arm-and-wrist."
            regions:
              skull-and-forehead: {contact: false, quasi-static-n: 130, stiffness-n-per-mm: 150, mass-kg: 4.4}
              face: {contact: false, quasi-static-n: 65, stiffness-n-per-mm: 75, mass-kg: 4.4}
              neck: {contact: true, quasi-static-n: 150, stiffness-n-per-mm: 50, mass-kg: 1.2}
              back-and-shoulders: {contact: true, quasi-static-n: 210, stiffness-n-per-mm: 35, mass-kg: 40}
              chest: {contact: true, quasi-static-n: 140, stiffness-n-per-mm: 25, mass-kg: 40}
              abdomen: {contact: true, quasi-static-n: 110, stiffness-n-per-mm: 10, mass-kg: 40}
              pelvis: {contact: true, quasi-static-n: 180, stiffness-n-per-mm: 25, mass-kg: 40}
              upper-arm-and-elbow: {contact: true, quasi-static-n: 150, stiffness-n-per-mm: 30, mass-kg: 3}
              lower-arm-and-wrist: {contact: true, quasi-static-n: 160, stiffness-n-per-mm: 40, mass-kg: 2}
              hand-and-fingers: {contact: true, quasi-static-n: 140, stiffness-n-per-mm: 75, mass-kg: 0.6}
              thigh-and-knee: {contact: true, quasi-static-n: 220, stiffness-n-per-mm: 50, mass-kg: 75}
              lower-leg: {contact: true, quasi-static-n: 130, stiffness-n-per-mm: 60, mass-kg: 75}
            """;

    private ContactTableReader() {}

    /** The table that ships with the program. */
    public static ContactTable shipped() {
        return read(SHIPPED).value();
    }

    /** The table in the text; it must name every region, so that none is left out by mistake. */
    public static Reading<ContactTable> read(String text) {
        return Reading.of(() -> {
            Fields file = Fields.of(
                    YamlReader.read(text), "a contact table", List.of("contact-table", "provenance", "regions"));
            file.wholeNumber("contact-table", 1, 1);
            return new ContactTable(Fields.longText(file.node("provenance"), "provenance"), regions(file));
        });
    }

    private static Map<BodyRegion, ContactTable.Region> regions(Fields file) {
        List<String> names =
                Arrays.stream(BodyRegion.values()).map(BodyRegion::word).toList();
        Fields regions = Fields.of(file.node("regions"), "the regions", names);
        Map<BodyRegion, ContactTable.Region> table = new EnumMap<>(BodyRegion.class);
        for (BodyRegion region : BodyRegion.values()) {
            table.put(region, region(regions.node(region.word())));
        }
        return table;
    }

    private static ContactTable.Region region(YamlNode node) {
        Fields region = Fields.of(node, "a region", REGION_FIELDS);
        return new ContactTable.Region(
                region.flag("contact"),
                region.number("quasi-static-n", NumberRule.ABOVE_ZERO),
                region.number("stiffness-n-per-mm", NumberRule.ABOVE_ZERO),
                region.number("mass-kg", NumberRule.ABOVE_ZERO));
    }
}
