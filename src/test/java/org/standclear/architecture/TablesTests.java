package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A feature writes its own tables only: another feature's rows change through its door, where its rules are. */
class TablesTests {

    private static final Pattern CREATES = Pattern.compile("create table (?:if not exists )?([a-z0-9_]+)");
    private static final Pattern WRITES =
            Pattern.compile("\\b(?:insert into|update|delete from|merge into)\\s+([a-z0-9_]+)");

    /** The session library's own table: ending a person's sessions is the business of people. */
    private static final Set<String> SHARED = Set.of("spring_session");

    /** Which feature's migration made each table. */
    private static Map<String, String> owners(List<TextFile> migrations) {
        Map<String, String> owners = new HashMap<>();
        for (TextFile migration : migrations) {
            String feature = migration.name().replaceFirst("^V\\d+__", "").replaceFirst("_.*", "");
            Matcher table = CREATES.matcher(migration.text().toLowerCase(Locale.ROOT));
            while (table.find()) {
                owners.put(table.group(1), feature);
            }
        }
        return owners;
    }

    private static List<String> trespasses(String feature, TextFile source, Map<String, String> owners) {
        List<String> found = new ArrayList<>();
        Matcher write = WRITES.matcher(source.text().toLowerCase(Locale.ROOT));
        while (write.find()) {
            String owner = owners.getOrDefault(write.group(1), feature);
            if (!owner.equals(feature) && !SHARED.contains(write.group(1))) {
                found.add(source.name() + " of " + feature + " writes " + write.group(1) + " of " + owner);
            }
        }
        return found;
    }

    @Test
    void featuresWriteTheirOwnTablesOnly() {
        Map<String, String> owners = owners(TextFile.below("db/migration", ".sql"));

        assertThat(owners).containsEntry("labs", "platform");
        for (String feature : Set.copyOf(owners.values())) {
            assertThat(TextFile.below("src/main/java/org/standclear/" + feature, ".java").stream()
                            .flatMap(file -> trespasses(feature, file, owners).stream()))
                    .isEmpty();
        }
    }

    @Test
    void catchesAFeatureThatWritesAnothersTable() {
        Map<String, String> owners = Map.of("cells", "cell", "bookings", "booking");
        TextFile source = new TextFile(
                Path.of("Planted.java"),
                "jdbc.sql(\"\"\"\n  update cells\n set state = 'HELD'\"\"\"); jdbc.sql(\"insert into bookings (id)\")");

        assertThat(trespasses("booking", source, owners))
                .containsExactly("Planted.java of booking writes cells of cell");
        assertThat(owners(List.of(new TextFile(Path.of("V40__cell_create_cells.sql"), "create table cells (id uuid)"))))
                .containsEntry("cells", "cell");
    }
}
