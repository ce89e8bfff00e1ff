package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.CellRegister;
import org.standclear.cell.Cells;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A lapse of another day is said with its date, in the lab's zone, wherever it is said; and no longer once somebody signs. */
class OldLapseIT {

    abstract static class Cases extends BenchPageCases {

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        private void movesToAnotherVersion() {
            String name = cells.find(scene().cell).orElseThrow().name();
            register.approve(SampleCell.proposed(register, scene().cell, SampleCell.file(name, 2)), PersonId.next(), 1);
        }

        private String programPage() throws Exception {
            return see(scene().noor, "/bookings/" + scene().booking + "/program")
                    .text();
        }

        private String deskLine() throws Exception {
            Person adaeze = scene().adaeze;
            return see(adaeze, "/desk")
                    .select("li:has(a[href=/bench/" + scene().cell + "])")
                    .text();
        }

        private void lapsedTheEveningBefore() {
            clock.moveTo(BenchScene.START.minus(Duration.ofHours(17)));
            scene().attached();
            movesToAnotherVersion();
            scene().preparation.look(scene().booking);
            clock.moveTo(BenchScene.START.plusSeconds(120));
        }

        @Test
        void hasItsDateOnEveryPage() throws Exception {
            lapsedTheEveningBefore();
            String says = "The check lapsed on Tue 10 Mar 2026 17:07: ";
            assertThat(programPage()).contains(says);
            assertThat(deskLine()).contains(says);
            assertThat(see(scene().mateo).text()).contains(says);
        }

        @Test
        void hasItsTimeAloneOnTheSameDay() throws Exception {
            scene().attached();
            movesToAnotherVersion();
            String says = "The check lapsed at 10:09: ";
            assertThat(programPage()).contains(says);
            assertThat(deskLine()).contains(says);
            assertThat(see(scene().mateo).text()).contains(says);
        }

        @Test
        void isNoNewsOnceSomebodySignedTheNextList() throws Exception {
            lapsedTheEveningBefore();
            scene().desk.look(scene().booking);
            assertThat(deskLine()).as("an open list alone says nothing").contains("lapsed");
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            assertThat(deskLine()).contains("signs the session list").doesNotContain("lapsed");
            assertThat(see(scene().mateo).text()).doesNotContain("lapsed");
            assertThat(programPage()).doesNotContain("lapsed");
        }

        @Test
        void isNewsAgainWhenSomethingElseLapses() throws Exception {
            scene().released();
            clock.moveBy(Duration.ofMinutes(10));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            movesToAnotherVersion();
            scene().desk.look(scene().booking);
            assertThat(deskLine()).contains("lapsed").contains("at version 2 now");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
