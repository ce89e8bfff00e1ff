package org.standclear.check.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.program.Programs;
import org.standclear.program.Revision;

/** What a person can choose from on the form: cells, own courses, own programs. */
@Component
class CheckChoices {

    private static final int PROGRAMS_OFFERED = 100;

    private final Cells cells;
    private final Courses courses;
    private final Programs programs;

    CheckChoices(Cells cells, Courses courses, Programs programs) {
        this.cells = cells;
        this.courses = courses;
        this.programs = programs;
    }

    Map<String, String> cells() {
        Map<String, String> options = new LinkedHashMap<>();
        options.put("", "Choose a cell");
        for (Cell cell : cells.all()) {
            options.put(cell.id().toString(), cell.name() + ", version " + cell.currentVersion());
        }
        return options;
    }

    Optional<CellId> cell(@Nullable String asked) {
        return cells.all().stream()
                .map(Cell::id)
                .filter(id -> id.toString().equals(asked))
                .findFirst();
    }

    Map<String, String> courses(SignedInPerson me) {
        Map<String, String> options = new LinkedHashMap<>();
        boolean takesAny = !courses.takenBy(me.id()).isEmpty();
        options.put(
                "",
                takesAny ? "No course: the strictest limits of all your courses" : "No course: override 50 % at most");
        for (Course course : coursesOf(me)) {
            options.put(course.id().toString(), course.code() + " " + course.title() + ": " + limits(course));
        }
        return options;
    }

    private static String limits(Course course) {
        Double speed = course.toolSpeedMmS();
        return "override " + ShownNumber.plain(course.overridePercent()) + " % at most"
                + (speed == null ? "" : ", tool speed " + ShownNumber.plain(speed) + " mm/s");
    }

    Optional<CourseId> course(SignedInPerson me, String asked) {
        return coursesOf(me).stream()
                .map(Course::id)
                .filter(id -> id.toString().equals(asked))
                .findFirst();
    }

    /** The one course of a student who has one; else none is chosen yet. */
    @Nullable
    String usualCourse(SignedInPerson me) {
        List<Course> own = me.isLabStaff() ? List.of() : coursesOf(me);
        return own.size() == 1 ? own.get(0).id().toString() : null;
    }

    private List<Course> coursesOf(SignedInPerson me) {
        if (me.isLabStaff()) {
            return courses.all();
        }
        return courses.takenBy(me.id());
    }

    Map<String, String> programs(SignedInPerson me, @Nullable String asked) {
        Map<String, String> options = new LinkedHashMap<>();
        options.put("", "A new program");
        programs.page(new Programs.PageRequest(me.id(), null, PROGRAMS_OFFERED))
                .revisions()
                .forEach(latest -> options.put(latest.program().toString(), words(latest)));
        if (asked != null && !asked.isBlank() && !options.containsKey(asked)) {
            latest(me, asked).ifPresent(latest -> options.put(latest.program().toString(), words(latest)));
        }
        return options;
    }

    private static String words(Revision latest) {
        return latest.title() + ", revision " + latest.number();
    }

    /** The latest revision of the program, if the person may see it. */
    Optional<Revision> latest(SignedInPerson me, String program) {
        try {
            return programs.revisionsFor(me.id(), ProgramId.of(program)).stream()
                    .findFirst();
        } catch (IllegalArgumentException notAnId) {
            return Optional.empty();
        }
    }
}
