package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;
import org.standclear.cell.CellStates;
import org.standclear.cell.Cells;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuty;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.report.TermReports;
import org.standclear.report.TermSpan;
import org.standclear.report.TermUpkeep;
import org.standclear.signoff.BenchCases;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** How a term's report counts what came round, what hung, what was set aside; each test looks at its own cell. */
class TermUpkeepIT {

    abstract static class Cases extends BenchCases {

        private static final LocalDate START = LocalDate.of(2026, 3, 11);

        @Autowired
        TermReports reports;

        @Autowired
        RecurringDuties duties;

        @Autowired
        CellStates states;

        @Autowired
        Cells cells;

        @Autowired
        LabTime labTime;

        @Autowired
        MockMvc mvc;

        private Person ines;

        @BeforeEach
        void anInstructor() {
            ines = scene().lab.person("Tomasz Fennimore-Ash", Role.INSTRUCTOR);
        }

        private String name() {
            return cells.find(scene().cell).orElseThrow().name();
        }

        private TermUpkeep term(LocalDate first, LocalDate last) {
            return reports.of(new TermSpan(first, last)).upkeep();
        }

        private TermUpkeep.Duty duty(TermUpkeep upkeep, RecurringDuty duty) {
            return upkeep.duties().stream()
                    .filter(one -> one.cell().equals(name()) && one.what().equals(duty.words()))
                    .findFirst()
                    .orElseThrow();
        }

        @Test
        void countsInspectionsDoneDueAndOverdue() {
            duties.setInterval(scene().cell, RecurringDuty.INSPECTION, 10, "monthly is too rare here", ines.id());
            duties.record(new RecurringDuties.RecordDuty(
                    scene().cell, RecurringDuty.INSPECTION, START, "A. Competent", "nothing found", ines.id()));
            clock.moveBy(Duration.ofDays(14));

            TermUpkeep.Duty seen = duty(term(START, START.plusDays(30)), RecurringDuty.INSPECTION);

            assertThat(seen.intervalDays()).isEqualTo(10);
            assertThat(seen.done()).isEqualTo(1);
            assertThat(seen.fellDue()).isEqualTo(2);
            assertThat(seen.overdueDays()).as("the 22nd to today, the 25th").isEqualTo(4);
            assertThat(seen.next()).isEqualTo(START.plusDays(10));
            assertThat(seen.lateAtEnd()).isTrue();
            assertThat(duty(term(START.plusDays(1), START.plusDays(9)), RecurringDuty.INSPECTION)
                            .overdueDays())
                    .isZero();
        }

        @Test
        void countsTheHoursOfAHoldWithinTheTerm() {
            clock.moveTo(START.atTime(20, 0).atZone(labTime.zone()).toInstant());
            states.tagOut(scene().cell, scene().hemi.id(), "cable chafe");
            clock.moveBy(Duration.ofHours(30));

            assertThat(tags(term(START, START))).singleElement().satisfies(one -> {
                assertThat(one.hours()).isEqualTo(4.0);
                assertThat(one.hung()).isEqualTo(1);
                assertThat(one.stillHanging()).isEqualTo(1);
            });
            assertThat(tags(term(START.plusDays(1), START.plusDays(2))))
                    .singleElement()
                    .satisfies(one -> assertThat(one.hours()).isEqualTo(26.0));
            assertThat(tags(term(START.minusDays(2), START.minusDays(1)))).isEmpty();
        }

        private List<TermUpkeep.Tags> tags(TermUpkeep upkeep) {
            return upkeep.tags().stream()
                    .filter(one -> one.cell().equals(name()))
                    .toList();
        }

        @Test
        void countsWaiversByCellAndCheck() {
            attachWithoutItsPart();
            waived("The peg was weighed at the bench.", ines.id());

            assertThat(term(START, START).waivers())
                    .filteredOn(one -> one.cell().equals(name()))
                    .singleElement()
                    .isEqualTo(new TermUpkeep.Waived(name(), 1, 0, 0, "payload 1"));
        }

        @Test
        void countsMakeUps() {
            TermUpkeep.MakeUps before = term(START, START).makeUps();
            jdbc.sql("""
                    insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until)
                    select cast(:id as uuid), l.id, cast(:person as uuid), cast(:by as uuid),
                        cast(:at as timestamp with time zone), cast(:until as timestamp with time zone) from labs l
                    order by l.id fetch first 1 row only""")
                    .param("id", org.standclear.platform.ids.Id.newValue())
                    .param("person", scene().noor.id().value())
                    .param("by", ines.id().value())
                    .param("at", org.standclear.platform.time.SqlTime.toSql(clock.instant()))
                    .param(
                            "until",
                            org.standclear.platform.time.SqlTime.toSql(
                                    clock.instant().plus(Duration.ofHours(1))))
                    .update();

            assertThat(term(START, START).makeUps().granted()).isEqualTo(before.granted() + 1);
            assertThat(term(START, START).makeUps().standing()).isEqualTo(before.standing() + 1);
            clock.moveBy(Duration.ofHours(1));
            assertThat(term(START, START).makeUps().expired()).isEqualTo(before.expired() + 1);
        }

        @Test
        void standsInPageAndTableWithAndWithoutNames() throws Exception {
            duties.setInterval(scene().cell, RecurringDuty.RISK_ASSESSMENT, 365, "once a year", ines.id());
            states.tagOut(scene().cell, scene().hemi.id(), "cable chafe");
            for (String names : new String[] {"", "&names=without"}) {
                String days = "first=2026-03-11&last=2026-03-11" + names;
                assertThat(get("/report?" + days).getContentAsString())
                        .contains("Restrictions, holds and tags", "every 365 days", "Make-ups", "Waivers");
                assertThat(get("/report/term.csv?" + days).getContentAsString())
                        .contains("inspection or review," + name() + ",risk-assessment review,every 365 days")
                        .contains("\"restriction, hold or tag\"," + name() + ",out-of-service tag,1,0.0,1")
                        .contains("make-ups,Granted");
            }
        }

        private MockHttpServletResponse get(String path) throws Exception {
            MockHttpServletResponse response = mvc.perform(
                            MockMvcRequestBuilders.get(path).with(Accounts.as(ines)))
                    .andReturn()
                    .getResponse();
            assertThat(response.getStatus()).as(path).isEqualTo(200);
            return response;
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
