package org.standclear.people.roster;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.people.SectionChange;
import org.standclear.people.StandingBookings;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;

/** Puts together what one act changed of each person's sections, for those who have to be told of it. */
@Component
class SectionMoves {

    private static final int TOGETHER = 1000;

    private final JdbcClient jdbc;
    private final StandingBookings standing;
    private final Labs labs;

    SectionMoves(JdbcClient jdbc, StandingBookings standing, Labs labs) {
        this.jdbc = jdbc;
        this.standing = standing;
        this.labs = labs;
    }

    /** Somebody's place in a section; its code is named with the course's. */
    record Place(UUID person, UUID section, String course, String code) {}

    /** The sections of one course that are left, come to and stayed in. */
    private record Course(Set<String> left, Set<String> came, Set<String> stays) {

        static Course without() {
            return new Course(new TreeSet<>(), new TreeSet<>(), new TreeSet<>());
        }

        SectionChange change() {
            return new SectionChange(List.copyOf(left), List.copyOf(came), List.copyOf(stays));
        }
    }

    /** Who has bookings ahead in this lab, with what changed course by course; read after the change. */
    Map<PersonId, List<SectionChange>> of(List<Place> left, List<Place> came) {
        Set<PersonId> people = new LinkedHashSet<>();
        left.forEach(place -> people.add(new PersonId(place.person())));
        came.forEach(place -> people.add(new PersonId(place.person())));
        Map<UUID, Map<String, Course>> changed = new LinkedHashMap<>();
        standing.whoHasAny(people).forEach(person -> changed.put(person.value(), new TreeMap<>()));
        left.forEach(place -> add(changed, place, Course::left));
        came.forEach(place -> add(changed, place, Course::came));
        now(changed.keySet()).forEach(place -> addStays(changed, place));
        Map<PersonId, List<SectionChange>> changes = new LinkedHashMap<>();
        changed.forEach((person, courses) -> changes.put(
                new PersonId(person),
                courses.values().stream().map(Course::change).collect(Collectors.toList())));
        return changes;
    }

    private static void add(
            Map<UUID, Map<String, Course>> changed, Place place, Function<Course, Set<String>> sections) {
        Map<String, Course> courses = changed.get(place.person());
        if (courses != null) {
            sections.apply(courses.computeIfAbsent(place.course(), code -> Course.without()))
                    .add(place.code());
        }
    }

    private static void addStays(Map<UUID, Map<String, Course>> changed, Place place) {
        Course course = changed.getOrDefault(place.person(), Map.of()).get(place.course());
        if (course != null && !course.came().contains(place.code())) {
            course.stays().add(place.code());
        }
    }

    private List<Place> now(Collection<UUID> people) {
        List<UUID> all = List.copyOf(people);
        List<Place> places = new ArrayList<>();
        for (int from = 0; from < all.size(); from += TOGETHER) {
            places.addAll(jdbc.sql("""
                    select e.person_id, e.section_id, c.code as course, s.code as section from enrolments e
                    join sections s on s.id = e.section_id join courses c on c.id = s.course_id
                    where e.person_id in (:people) and c.lab_id = :lab""")
                    .param("lab", labs.theLab().id().value())
                    .param("people", all.subList(from, Math.min(all.size(), from + TOGETHER)))
                    .query(SectionMoves::place)
                    .list());
        }
        return places;
    }

    static Place place(ResultSet row, int number) throws SQLException {
        String course = row.getString("course");
        return new Place(
                row.getObject("person_id", UUID.class),
                row.getObject("section_id", UUID.class),
                course,
                course + "-" + row.getString("section"));
    }
}
