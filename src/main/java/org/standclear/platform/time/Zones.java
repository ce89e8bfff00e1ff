package org.standclear.platform.time;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** The zones that a lab's clocks can show: places of the tz database, and UTC. */
public final class Zones {

    private static final String PLACES =
            "(Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia|Europe|Indian|Pacific)/.+|UTC";

    private Zones() {}

    /** Id and words of each, in the order of the ids. */
    public static Map<String, String> choices() {
        Map<String, String> zones = new LinkedHashMap<>();
        new TreeSet<>(ZoneId.getAvailableZoneIds())
                .stream().filter(zone -> zone.matches(PLACES)).forEach(zone -> zones.put(zone, zone.replace('_', ' ')));
        return zones;
    }

    /** The zone of that id; empty when there is none. */
    public static Optional<ZoneId> read(String id) {
        return ZoneId.getAvailableZoneIds().contains(id) ? Optional.of(ZoneId.of(id)) : Optional.empty();
    }
}
