package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.SampleLab;
import org.standclear.cell.CellFeatures;
import org.standclear.people.AssignmentNeeds;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** A feature is taken away from a cell: whose bookings need it, and the plan that moves them and nobody else. */
class FeaturePagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        CourseRegister register;

        @Autowired
        AssignmentNeeds needs;

        @Autowired
        CellFeatures features;

        @Autowired
        BookingDesk desk;

        @Autowired
        Bookings bookings;

        /** No other test's cell has it. */
        private final String camera = "camera " + UUID.randomUUID();

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private AssignmentId assignmentWithCamera(Person student) {
            CourseId course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            SectionId section = done(register.addSection(course, "01", null));
            done(register.enrol(student.id(), section, null));
            AssignmentId assignment = done(register.addAssignment(new NewAssignment(
                    course, "Look at the plate", 1, Map.of(section, Instant.parse("2026-03-20T12:00:00Z")), null)));
            needs.set(assignment, new Needs(null, Set.of(camera)), PersonId.next());
            return assignment;
        }

        private MockHttpServletResponse act(String path, Person by, String... values) {
            var request = post(path).param("formToken", UUID.randomUUID().toString());
            for (int i = 0; i < values.length; i += 2) {
                request = request.param(values[i], values[i + 1]);
            }
            return send(request, by);
        }

        @Test
        void saysWhoNeedsItAndLeadsToTheirMoveOnly() {
            SampleLab lab = new SampleLab(application);
            Person noor = lab.student("Noor Candlewick");
            Person yuki = lab.student("Yuki Halfmoon");
            Person adaeze = lab.technician("Adaeze Lanternby");
            CellId avocet = lab.cell(7);
            CellId bittern = lab.cell(15);
            assertThat(features.add(avocet, camera, adaeze.id())).isEmpty();
            String path = "/cells/" + avocet + "/features";
            UUID feature = features.of(avocet).get(0).id();
            assertThat(page(get(path + "/" + feature + "/remove"), adaeze)
                            .select("h1")
                            .text())
                    .startsWith("No booking on ");

            var outcome = desk.book(new MakeBooking(
                    avocet,
                    Instant.parse("2026-03-12T12:07:00Z"),
                    noor.id(),
                    null,
                    null,
                    assignmentWithCamera(noor),
                    noor.id()));
            Booking needing = ((BookingDesk.Outcome.Booked) outcome).booking();
            Booking practice = lab.booked(avocet, "2026-03-12T13:07:00Z", yuki, null);
            Document asked = page(get(path + "/" + feature + "/remove"), adaeze);
            assertThat(asked.select("h1").text())
                    .startsWith("1 booking on ")
                    .endsWith("needs \u201c" + camera + "\u201d");
            assertThat(asked.select("#needing ~ ul li").eachText())
                    .containsExactly("Noor Candlewick, Thu 12 Mar 12:07 needs " + camera);
            assertThat(asked.select("a[href=/bookings/" + needing.id() + "]")).hasSize(1);
            assertThat(send(get(path + "/" + feature + "/remove"), noor).getStatus())
                    .isEqualTo(403);
            assertThat(page(get(path), adaeze).select("#unmet")).isEmpty();

            assertThat(location(act(path + "/" + feature + "/remove", adaeze))).isEqualTo(path);
            assertThat(send(get(path + "/" + feature + "/remove"), adaeze).getStatus())
                    .as("taken away already")
                    .isEqualTo(404);
            assertThat(features.add(bittern, camera, adaeze.id())).isEmpty();
            Document after = page(get(path), adaeze);
            assertThat(after.select("#unmet ~ ul li").text()).startsWith("Noor Candlewick, Thu 12 Mar 12:07");
            String move =
                    after.select("section[aria-labelledby=unmet] p.acts a").attr("href");
            Document plan = page(get(move), adaeze);
            assertThat(plan.select("#plan ~ .frame tbody tr").eachText())
                    .singleElement()
                    .asString()
                    .startsWith("Noor Candlewick");
            String to = location(act(
                    move.replaceAll("\\?.*", ""),
                    adaeze,
                    "seen",
                    plan.select("input[name=seen]").val(),
                    "until",
                    plan.select("input[name=until]").val(),
                    "whom",
                    plan.select("input[name=whom]").val(),
                    "reason",
                    "the camera was taken away"));
            assertThat(to).startsWith("/book/moves/");
            assertThat(bookings.find(needing.id()).orElseThrow().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
            assertThat(bookings.of(noor.id(), needing.start()).get(0).cell()).isEqualTo(bittern);
            assertThat(bookings.find(practice.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
            assertThat(page(get(path), adaeze).select("#unmet")).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
