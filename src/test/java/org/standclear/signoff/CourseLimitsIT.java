package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.BookingState;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.platform.ids.CourseId;
import org.standclear.signoff.Releases.StartPermission;
import org.standclear.testing.LockWaits;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What a course's limits allowed no longer counts once they change, wherever the booking has got to. */
class CourseLimitsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        CourseRegister courses;

        @Autowired
        Rechecks rechecks;

        @Autowired
        PlatformTransactionManager transactions;

        @Autowired
        JdbcTemplate template;

        private CourseId course = CourseId.next();
        private int version = 1;

        @BeforeEach
        void theBookingIsOfACourse() {
            String code = "R" + UUID.randomUUID().toString().substring(0, 8);
            course = done(courses.addCourse(code, "Robot cells", null));
            jdbc.sql("update bookings set course_id = :course where id = :booking")
                    .param("course", course.value())
                    .param("booking", scene().booking.value())
                    .update();
        }

        /** Other tests of the same database look at the desk, where what is outside its limits shows. */
        @AfterEach
        void theBookingIsOfNoCourse() {
            jdbc.sql("update bookings set course_id = null where id = :booking")
                    .param("booking", scene().booking.value())
                    .update();
            scene().desk.look(scene().booking);
        }

        @SuppressWarnings("unchecked")
        private CourseId done(Outcome<CourseId> outcome) {
            return ((Outcome.Done<CourseId>) is(Outcome.Done.class, outcome)).id();
        }

        private void limitOverrideTo(double percent) {
            clock.moveBy(Duration.ofSeconds(1));
            done(courses.changeLimits(new NewLimits(
                    course,
                    percent,
                    null,
                    "first weeks",
                    version++,
                    scene().adaeze.id())));
        }

        @Test
        void takesBackTheCheckOfAReadyBooking() {
            scene().ready();
            limitOverrideTo(30);
            scene().desk.look(scene().booking);
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(signed.lapses(scene().booking)).anySatisfy(lapse -> {
                assertThat(lapse.what()).isEqualTo("check");
                assertThat(lapse.because()).contains("limits of the course changed");
            });
            assertThat(scene().preparation.look(scene().booking).says()).contains("30");
        }

        @Test
        void takesBackARelease() {
            Release release = scene().released();
            limitOverrideTo(30);
            StartPermission permission = releases.useForStart(
                    scene().booking, release.code(), scene().noor.id());
            assertThat(is(StartPermission.Refused.class, permission).says())
                    .contains("limits or the rules of the check");
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed())
                    .satisfies(lapsed -> assertThat(
                                    java.util.Objects.requireNonNull(lapsed).rule())
                            .isEqualTo(LapseRule.LIMITS_CHANGED));
        }

        @Test
        void readsEverythingAgainWhenTheProgramIsStillWithin() {
            scene().released();
            limitOverrideTo(60);
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.SESSION);
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
        }

        /** The check has read the limits and computed, but is not kept yet, when other limits are committed. */
        @Test
        void checksAnewWhatWasBeingCheckedWhenTheLimitsChanged() throws Exception {
            scene().attached();
            limitOverrideTo(60);
            ExecutorService other = Executors.newSingleThreadExecutor();
            try {
                Future<?> look = new TransactionTemplate(transactions).execute(status -> {
                    jdbc.sql("select id from programs where id = :id for update")
                            .param("id", scene().revision().program().value())
                            .query(UUID.class)
                            .single();
                    Future<?> checking = other.submit(() -> scene().desk.look(scene().booking));
                    // computed, and waits to be kept
                    new LockWaits(template).awaitAnybody();
                    inItsOwnTransaction().executeWithoutResult(change -> limitOverrideTo(30));
                    return checking;
                });
                Objects.requireNonNull(look).get(20, TimeUnit.SECONDS);
            } finally {
                other.shutdown();
            }
            assertThat(scene().state()).as("by the limits of before").isEqualTo(BookingState.CHECKED);

            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }

        /** This course's change has the lesser number, and is committed after another course's, and after the check. */
        @Test
        void checksAnewWhenAnotherCoursesLimitsChangeAtTheSameTime() {
            int ours = version;
            String code = "R" + UUID.randomUUID().toString().substring(0, 8);
            CourseId another = done(courses.addCourse(code, "Robot programming", null));
            new TransactionTemplate(transactions).executeWithoutResult(change -> {
                limitOverrideTo(30);
                inItsOwnTransaction().executeWithoutResult(other -> {
                    course = another;
                    version = 1;
                    limitOverrideTo(40);
                });
                inItsOwnTransaction().executeWithoutResult(look -> scene().attached());
            });
            version = ours + 1;
            assertThat(scene().state()).as("by the limits of before").isEqualTo(BookingState.CHECKED);
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }

        private TransactionTemplate inItsOwnTransaction() {
            TransactionTemplate own = new TransactionTemplate(transactions);
            own.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
            return own;
        }

        @Test
        void checksAnewWithoutAnybodyLooking() {
            scene().attached();
            limitOverrideTo(30);
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            limitOverrideTo(50);
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
        }

        /** By its time, a change that came after the clock had been set back came before the check. */
        @Test
        void checksAnewThoughTheClockWasSetBackBeforeTheChange() {
            scene().attached();
            clock.moveBy(Duration.ofMinutes(-20));
            limitOverrideTo(30);
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
