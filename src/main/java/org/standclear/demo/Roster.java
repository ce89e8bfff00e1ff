package org.standclear.demo;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/** The ids behind the names that the seed files use. */
final class Roster {

    private final Map<String, PersonId> people = new HashMap<>();
    private final Map<PersonId, PersonSeed> seeds = new HashMap<>();
    private final Map<String, CellId> cells = new HashMap<>();
    private final Map<CellId, String> programs = new HashMap<>();
    private final Map<String, SectionId> sections = new HashMap<>();
    private final Map<String, Studies> studies = new HashMap<>();

    /** The course of a section, and what is due there. */
    record Studies(CourseId course, @Nullable AssignmentId assignment) {}

    void add(PersonSeed seed, PersonId id) {
        people.put(seed.login(), id);
        seeds.put(id, seed);
    }

    void addCell(String name, CellId id) {
        cells.put(name, id);
    }

    void addSection(String name, SectionId id, Studies what) {
        sections.put(name, id);
        studies.put(name, what);
    }

    PersonId person(String login) {
        return known(people, login);
    }

    PersonSeed seed(PersonId person) {
        return known(seeds, person);
    }

    CellId cell(String name) {
        return known(cells, name);
    }

    void setProgramFor(CellId cell, String program) {
        programs.put(cell, program);
    }

    /** The program that the script runs on the cell. */
    String programFor(CellId cell) {
        return known(programs, cell);
    }

    SectionId section(String name) {
        return known(sections, name);
    }

    /** What the person studies; null for people who are enrolled in nothing. */
    @Nullable
    Studies studies(PersonId person) {
        return studies.get(seed(person).section());
    }

    private static <K, V> V known(Map<K, V> map, K key) {
        V value = map.get(key);
        if (value == null) {
            throw new IllegalStateException("seed-data names " + key + ", but does not describe it");
        }
        return value;
    }
}
