package org.standclear.platform.lab;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabThings.Kind;

/** Looks up whose things are, whatever kind of things they are: ids are never used twice. */
@Repository
public class LabOwners {

    /** Some megabytes; what people look at on one day is far less. */
    private static final int KEPT = 20_000;

    private final JdbcClient jdbc;
    private final List<LabThings> features;

    /** What belongs to a lab for good, so that the many tables are not asked anew with every request. */
    private final Map<UUID, LabId> known = new ConcurrentHashMap<>();

    LabOwners(JdbcClient jdbc, List<LabThings> features) {
        this.jdbc = jdbc;
        this.features = features;
    }

    /** The labs of each thing; ids that nothing has are left out. Only people belong to more than one. */
    public Map<UUID, Set<LabId>> of(Collection<UUID> ids) {
        Map<UUID, Set<LabId>> found = new HashMap<>();
        Set<UUID> open = new HashSet<>(ids);
        for (UUID id : ids) {
            LabId lab = known.get(id);
            if (lab != null) {
                found.put(id, Set.of(lab));
                open.remove(id);
            }
        }
        found.putAll(ask(open, kind -> !kind.forGood()));
        open.removeAll(found.keySet());
        Map<UUID, Set<LabId>> forGood = ask(open, Kind::forGood);
        keep(forGood);
        found.putAll(forGood);
        return found;
    }

    private Map<UUID, Set<LabId>> ask(Set<UUID> ids, Predicate<Kind> which) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        String sql = features.stream()
                .flatMap(feature -> feature.kinds().stream())
                .filter(which)
                .map(Kind::sql)
                .collect(Collectors.joining(" union all "));
        Map<UUID, Set<LabId>> found = new HashMap<>();
        jdbc.sql(sql).param("ids", List.copyOf(ids)).query(row -> {
            found.computeIfAbsent(row.getObject("id", UUID.class), id -> new HashSet<>())
                    .add(new LabId(row.getObject("lab_id", UUID.class)));
        });
        return found;
    }

    private void keep(Map<UUID, Set<LabId>> found) {
        if (known.size() > KEPT) {
            known.clear();
        }
        found.forEach((id, labs) -> labs.forEach(lab -> known.put(id, lab)));
    }
}
