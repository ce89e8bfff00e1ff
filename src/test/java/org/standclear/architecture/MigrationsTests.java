package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Migrations say what they do in their names, and both engines get every one of them. */
class MigrationsTests {

    private static final Pattern NAME = Pattern.compile("V([1-9][0-9]*)__([a-z]+)_([a-z]+)(_[a-z0-9]+)+\\.sql");
    private static final Set<String> FEATURES = Set.of(
            "platform",
            "trail",
            "people",
            "cell",
            "program",
            "check",
            "booking",
            "signoff",
            "run",
            "incident",
            "message",
            "report",
            "retention");
    private static final Set<String> FOLDERS = Set.of("common", "h2", "postgresql");

    /** One file below db/migration, by its folder and its name. */
    private record Migration(String folder, String name) {

        static Migration of(String folderAndName) {
            String[] parts = folderAndName.split("/");
            return new Migration(parts[parts.length - 2], parts[parts.length - 1]);
        }

        boolean isNamedByPattern() {
            Matcher matcher = NAME.matcher(name);
            return FOLDERS.contains(folder) && matcher.matches() && FEATURES.contains(matcher.group(2));
        }

        String number() {
            return name.replaceFirst("__.*", "");
        }

        boolean sharesAnEngineWith(Migration other) {
            return folder.equals(other.folder) || folder.equals("common") || other.folder.equals("common");
        }
    }

    /** Says what is wrong with these migrations, each given as folder/name. */
    private static List<String> faults(List<String> files) {
        List<Migration> migrations = files.stream().map(Migration::of).toList();
        List<String> faults = new ArrayList<>();
        for (int i = 0; i < migrations.size(); i++) {
            Migration one = migrations.get(i);
            if (!one.isNamedByPattern()) {
                faults.add(one + " is not named V<n>__<feature>_<verb>_<object>.sql in common, h2 or postgresql");
            }
            if (migrations.subList(0, i).stream()
                    .anyMatch(other -> other.number().equals(one.number()) && other.sharesAnEngineWith(one))) {
                faults.add(one + " has a number that is taken");
            }
        }
        if (!namesIn("h2", migrations).equals(namesIn("postgresql", migrations))) {
            faults.add("h2 has " + namesIn("h2", migrations) + ", postgresql has " + namesIn("postgresql", migrations));
        }
        return faults;
    }

    private static Set<String> namesIn(String folder, List<Migration> migrations) {
        return migrations.stream()
                .filter(migration -> migration.folder().equals(folder))
                .map(Migration::name)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static List<TextFile> migrations() {
        return TextFile.below("db/migration", "");
    }

    @Test
    void areNamedByPatternAndComplete() {
        List<String> files =
                migrations().stream().map(file -> file.path().toString()).toList();

        assertThat(files).hasSizeGreaterThan(20);
        assertThat(faults(files)).isEmpty();
    }

    @Test
    void storeInstantsWithTheirZone() {
        Pattern plain = Pattern.compile("\\btimestamp\\b(?!(\\s*\\(\\d\\))?\\s+with\\s+time\\s+zone)");

        assertThat(migrations().stream()
                        .filter(file ->
                                plain.matcher(withoutComments(file.text())).find()))
                .isEmpty();
        assertThat(plain.matcher("at timestamp not null").find()).isTrue();
        assertThat(plain.matcher("at timestamp(6) with time zone").find()).isFalse();
    }

    private static String withoutComments(String sql) {
        return sql.lines()
                .map(line -> line.replaceFirst("--.*", ""))
                .collect(Collectors.joining("\n"))
                .toLowerCase(Locale.ROOT);
    }

    @Test
    void catchesBadNames() {
        assertThat(faults(List.of("common/V1__people_create_accounts.sql"))).isEmpty();
        assertThat(faults(List.of("common/V1_people.sql"))).hasSize(1);
        assertThat(faults(List.of("common/V01__people_create_accounts.sql"))).hasSize(1);
        assertThat(faults(List.of("common/V1__robots_create_accounts.sql"))).hasSize(1);
        assertThat(faults(List.of("oracle/V1__people_create_accounts.sql"))).hasSize(1);
    }

    @Test
    void catchesTakenNumbersAndMissingPairs() {
        assertThat(faults(List.of("common/V1__people_create_accounts.sql", "common/V1__cell_create_cells.sql")))
                .singleElement()
                .asString()
                .endsWith("has a number that is taken");
        assertThat(faults(List.of("h2/V2__cell_create_cells.sql"))).hasSize(1);
        assertThat(faults(List.of("h2/V2__cell_create_cells.sql", "postgresql/V2__cell_create_cells.sql")))
                .isEmpty();
        assertThat(faults(List.of(
                        "common/V2__cell_add_tags.sql",
                        "h2/V2__cell_create_cells.sql",
                        "postgresql/V2__cell_create_cells.sql")))
                .isNotEmpty();
    }
}
