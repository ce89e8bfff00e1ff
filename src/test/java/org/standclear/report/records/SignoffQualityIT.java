package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.standclear.people.Person;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.report.SignoffQualities;
import org.standclear.report.SignoffQuality;
import org.standclear.signoff.Part;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** How lists were signed, at times and with answers that the test chose; tests share the week, so they look at what is added. */
class SignoffQualityIT {

    abstract static class Cases extends ExceptionCases {

        @Autowired
        SignoffQualities qualities;

        @Autowired
        MockMvc mvc;

        /** Operator, 20 s later the attendant, 25 s later the releaser: 45 s. */
        private void signedWithin45Seconds() {
            scene().ready();
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            clock.moveBy(Duration.ofSeconds(20));
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            clock.moveBy(Duration.ofSeconds(25));
            scene().releasedBy(scene().adaeze);
        }

        private static List<Long> added(SignoffQuality before, SignoffQuality after) {
            List<Long> added = new ArrayList<>(after.seconds());
            before.seconds().forEach(added::remove);
            return added;
        }

        @Test
        void measuresFromTheFirstSignatureToTheLast() {
            SignoffQuality before = qualities.week(MONDAY);
            signedWithin45Seconds();
            SignoffQuality after = qualities.week(MONDAY);
            assertThat(added(before, after)).containsExactly(45L);
            assertThat(after.refused()).isEqualTo(before.refused());
            assertThat(after.disagreements()).isEqualTo(before.disagreements());
        }

        /** A list that says the same as the one before on its cell; one with another answer, and what follows it, does not. */
        @Test
        void countsListsThatSayTheSameAsTheOneBefore() {
            signedWithin45Seconds();
            SignoffQuality first = qualities.week(MONDAY);
            UUID list = signedList();
            copied(list, 1, "");
            assertThat(qualities.week(MONDAY).sameAsBefore()).isEqualTo(first.sameAsBefore() + 1);
            copied(list, 2, "!");
            assertThat(qualities.week(MONDAY).sameAsBefore()).isEqualTo(first.sameAsBefore() + 1);
            copied(list, 3, "");
            assertThat(qualities.week(MONDAY).sameAsBefore()).isEqualTo(first.sameAsBefore() + 1);
            copied(list, 4, "");
            SignoffQuality last = qualities.week(MONDAY);
            assertThat(last.sameAsBefore()).isEqualTo(first.sameAsBefore() + 2);
            assertThat(added(first, last)).containsExactly(45L, 45L, 45L, 45L);
        }

        @Test
        void countsARefusedListAndWhatWasReadAgain() {
            SignoffQuality before = qualities.week(MONDAY);
            scene().awaitsReleaser();
            scene().enter(Part.RELEASER, scene().adaeze, 2, Map.of("power", "reduced", "override", "40"));
            scene().enter(Part.RELEASER, scene().adaeze, 8, Map.of("people", "clear"));
            scene().sign(Part.RELEASER, scene().adaeze);
            SignoffQuality after = qualities.week(MONDAY);
            assertThat(after.refused()).isEqualTo(before.refused() + 1);
            assertThat(after.disagreements()).isEqualTo(before.disagreements() + 1);
            assertThat(added(before, after)).as("no list was signed by three").isEmpty();

            scene().enter(Part.OPERATOR, scene().noor, 2, Map.of("power", "reduced", "override", "60"));
            assertThat(qualities.week(MONDAY).disagreements()).isEqualTo(before.disagreements() + 2);
            assertThat(qualities.week(MONDAY).refused()).isEqualTo(before.refused() + 1);
        }

        @Test
        void leavesOutOtherWeeks() {
            signedWithin45Seconds();
            assertThat(qualities.week(MONDAY.minusWeeks(1)).lists()).isZero();
            assertThat(qualities.week(MONDAY.plusWeeks(1)).lists()).isZero();
        }

        /** Each line ends in a question, and none names anybody. */
        @Test
        void asksAndNamesNobody() throws Exception {
            signedWithin45Seconds();
            SignedInPerson me = new SignedInPerson(ines.id(), ines.login(), ines.printedName(), ines.roles(), null);
            String page = mvc.perform(get("/exceptions?week=" + MONDAY).with(user(me)))
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
            assertThat(Jsoup.parse(page).title()).startsWith("Exceptions, week of Mon 9 Mar 2026");
            Element section = Objects.requireNonNull(Jsoup.parse(page).selectFirst("section[aria-labelledby=quality]"));
            assertThat(section.select("li").eachText())
                    .hasSize(3)
                    .allSatisfy(line -> assertThat(line).endsWith("?"));
            assertThat(section.text()).contains("never a score of a person");
            for (Person person : List.of(scene().noor, scene().mateo, scene().adaeze)) {
                assertThat(section.text()).doesNotContain(person.printedName());
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
