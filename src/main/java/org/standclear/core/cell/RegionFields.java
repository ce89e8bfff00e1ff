package org.standclear.core.cell;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.YamlNode;

/** Reads what regions of the body bear, each value with its source. */
public final class RegionFields {

    private static final List<String> FIELDS =
            List.of("contact", "quasi-static-n", "stiffness-n-per-mm", "mass-kg", "source");

    private RegionFields() {}

    /** The regions that the mapping names. */
    public static Map<BodyRegion, RegionValues> of(YamlNode node) {
        List<String> names =
                Arrays.stream(BodyRegion.values()).map(BodyRegion::word).toList();
        Fields regions = Fields.of(node, "the regions", names);
        Map<BodyRegion, RegionValues> values = new EnumMap<>(BodyRegion.class);
        for (BodyRegion region : BodyRegion.values()) {
            if (regions.has(region.word())) {
                values.put(region, values(regions.node(region.word())));
            }
        }
        return values;
    }

    private static RegionValues values(YamlNode node) {
        Fields region = Fields.of(node, "a region", FIELDS);
        return new RegionValues(
                region.flag("contact"),
                region.number("quasi-static-n", NumberRule.ABOVE_ZERO),
                region.number("stiffness-n-per-mm", NumberRule.ABOVE_ZERO),
                region.number("mass-kg", NumberRule.ABOVE_ZERO),
                Fields.longText(region.node("source"), "source"));
    }
}
