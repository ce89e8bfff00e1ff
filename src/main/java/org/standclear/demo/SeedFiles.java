package org.standclear.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.springframework.core.io.ClassPathResource;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Reads the files of seed-data; a mistake in one stops the start with the name of the file. */
final class SeedFiles {

    private static final CSVFormat CSV =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    private final YAMLMapper yaml = YAMLMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .build();

    LabSeed lab() {
        return yaml("lab.yaml", LabSeed.class);
    }

    CoursesSeed courses() {
        return yaml("courses.yaml", CoursesSeed.class);
    }

    WeekSeed week() {
        return yaml("week.yaml", WeekSeed.class);
    }

    List<IncidentsSeed.IncidentSeed> incidents() {
        return yaml("incidents.yaml", IncidentsSeed.class).incidents();
    }

    SecondLabSeed secondLab() {
        return yaml("second-lab.yaml", SecondLabSeed.class);
    }

    List<PersonSeed> people() {
        try (var reader = new InputStreamReader(open("people.csv"), StandardCharsets.UTF_8)) {
            return CSV.parse(reader).stream().map(SeedFiles::person).toList();
        } catch (IOException e) {
            throw new UncheckedIOException("seed-data/people.csv", e);
        }
    }

    String text(String name) {
        return new String(bytes(name), StandardCharsets.UTF_8);
    }

    private byte[] bytes(String name) {
        try (InputStream in = open(name)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("seed-data/" + name, e);
        }
    }

    private static InputStream open(String name) throws IOException {
        return new ClassPathResource("seed-data/" + name).getInputStream();
    }

    private <T> T yaml(String name, Class<T> type) {
        return yaml.readValue(bytes(name), type);
    }

    private static PersonSeed person(CSVRecord row) {
        return new PersonSeed(
                row.get("login"), row.get("printed name"), row.get("role"), row.get("section"), row.get("note"));
    }
}
