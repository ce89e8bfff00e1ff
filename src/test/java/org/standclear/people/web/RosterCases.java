package org.standclear.people.web;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.standclear.booking.BookingDesk;
import org.standclear.people.CourseRegister;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.web.PageCases;

/** What tests of rosters share: a course of their own with two sections, and an instructor who sends files. */
abstract class RosterCases extends PageCases {

    @Autowired
    ApplicationContext application;

    @Autowired
    CourseRegister register;

    @Autowired
    Courses courses;

    @Autowired
    People everybody;

    @Autowired
    BookingDesk desk;

    @Autowired
    JdbcClient jdbc;

    protected String course = "";
    protected String own = "";
    protected @Nullable CourseId courseId;
    protected @Nullable SectionId first;
    protected @Nullable SectionId second;
    private @Nullable Person ines;

    @BeforeEach
    void aCourse() {
        String id = UUID.randomUUID().toString().substring(0, 8);
        course = "RB" + id;
        own = id;
        courseId = done(register.addCourse(course, "Robots", null));
        first = done(register.addSection(Objects.requireNonNull(courseId), "01", null));
        second = done(register.addSection(Objects.requireNonNull(courseId), "02", null));
        ines = person(Role.INSTRUCTOR);
    }

    protected static <T> T done(CourseRegister.Outcome<T> outcome) {
        return ((CourseRegister.Outcome.Done<T>) outcome).id();
    }

    protected Person ines() {
        return Objects.requireNonNull(ines);
    }

    protected MockHttpServletResponse sendFile(String text) {
        var file = new MockMultipartFile("file", "term.csv", "text/csv", text.getBytes(StandardCharsets.UTF_8));
        return send(
                multipart("/people/rosters")
                        .file(file)
                        .param("formToken", UUID.randomUUID().toString()),
                ines());
    }

    protected MockHttpServletResponse act(String path, String... values) {
        var request = post(path).param("formToken", UUID.randomUUID().toString());
        for (int i = 0; i < values.length; i += 2) {
            request = request.param(values[i], values[i + 1]);
        }
        return send(request, ines());
    }

    /** Applies what the preview shows now. */
    protected MockHttpServletResponse apply(String preview, String... values) {
        String seen = page(get(preview), ines()).select("input[name=seen]").val();
        String[] all = java.util.Arrays.copyOf(values, values.length + 2);
        all[values.length] = "seen";
        all[values.length + 1] = seen;
        return act(preview + "/apply", all);
    }

    protected String line(String login, String name, String section) {
        return login + own + "," + name + "," + course + "," + section + "\n";
    }
}
