package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.cell.CellRegister;
import org.standclear.cell.Cells;
import org.standclear.cell.SampleCell;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.program.SampleProgram;
import org.standclear.signoff.Waivers.GiveWaiver;
import org.standclear.signoff.Waivers.Given;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Lines that nobody read are never waived unseen, and what was not checked stands where people release. */
class UnreadLinesIT {

    private static final String REASON = "The clamp is driven by hand here; watched by me.";

    abstract static class Cases extends WaiverCases {

        private void attachBlocks() {
            attach("peg.txt", SampleProgram.blocksWithUnreadLine());
        }

        private Person instructor() {
            return scene().lab.person("Ines Quarryvale", Role.INSTRUCTOR);
        }

        private Given give(@Nullable String linesRead) {
            return waivers.give(new GiveWaiver(
                    scene().booking,
                    answer().id(),
                    REASON,
                    scene().now().end(),
                    linesRead,
                    instructor().id()));
        }

        @Test
        void areNotWaivedUnlessSomebodySaysToHaveReadThem() {
            attachBlocks();
            assertThat(is(Given.Refused.class, give(null))).satisfies(refused -> {
                assertThat(refused.field()).isEqualTo("linesRead");
                assertThat(refused.says()).contains("none of them sets power, speed or override");
            });
            assertThat(waivers.of(scene().booking)).isEmpty();

            Waiver waiver = is(Given.Kept.class, give(Waiver.LINES_READ)).waiver();
            assertThat(waiver.checks()).contains("coverage");
            assertThat(waivers.standing(scene().booking))
                    .hasValueSatisfying(one -> assertThat(one.linesRead())
                            .isEqualTo("I have read each unread line; none of them sets power, speed or override"));
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "",
                    "true",
                    "I have read each unread line",
                    "I have read each unread line; none of them sets power, speed or override.",
                    "I have read each unread line; one of them sets power, speed or override"
                })
        void areNotWaivedByAnotherSentence(String sentence) {
            attachBlocks();
            assertThat(is(Given.Refused.class, give(sentence)).field()).isEqualTo("linesRead");
            assertThat(waivers.of(scene().booking)).isEmpty();
        }

        @Test
        void areConfirmedInTheRecordAndInWhatThreePeopleSign() throws Exception {
            attachBlocks();
            give(Waiver.LINES_READ);
            assertThat(jdbc.sql("select words from trail_entries where kind = 'signoff.waived' and subject like :about")
                            .param("about", "%" + scene().booking)
                            .query(String.class)
                            .list())
                    .singleElement()
                    .satisfies(words -> assertThat(words).contains(Waiver.LINES_READ));
            for (String path : new String[] {
                "/bench/" + scene().cell,
                "/checks/" + answer().id(),
                "/bookings/" + scene().booking + "/program",
                "/bookings/" + scene().booking + "/waiver"
            }) {
                assertThat(page(path, instructor()).text()).as(path).contains(Waiver.LINES_READ);
            }
        }

        @Test
        void standOnThePageThatAsksForThem() throws Exception {
            attachBlocks();
            String path = "/bookings/" + scene().booking + "/waiver";
            Document form = page(path, instructor());
            assertThat(form.select("ol[data-look=lines] li").eachText()).containsExactly("line 12 N20 S900 M3");
            assertThat(form.select("label[for=linesRead]").text()).isEqualTo(Waiver.LINES_READ + ".");

            MockHttpServletResponse refused = send(
                    post(path)
                            .param(
                                    "formToken",
                                    form.select("main input[name=formToken]").val())
                            .param("answer", answer().id().toString())
                            .param("shown", form.select("input[name=shown]").val())
                            .param("reason", REASON)
                            .param("expires", form.select("input[name=expires]").val()),
                    instructor());
            assertThat(refused.getStatus()).isEqualTo(422);
            Document again = Jsoup.parse(refused.getContentAsString());
            assertThat(again.select("#linesRead-error").text()).contains("If one does, mend the program.");
            assertThat(again.select("textarea[name=reason]").text()).isEqualTo(REASON);

            assertThat(send(
                                    post(path)
                                            .param(
                                                    "formToken",
                                                    again.select("main input[name=formToken]")
                                                            .val())
                                            .param("answer", answer().id().toString())
                                            .param(
                                                    "shown",
                                                    again.select("input[name=shown]")
                                                            .val())
                                            .param("reason", REASON)
                                            .param("linesRead", "true")
                                            .param(
                                                    "sentence",
                                                    again.select("input[name=sentence]")
                                                            .val())
                                            .param(
                                                    "expires",
                                                    form.select("input[name=expires]")
                                                            .val()),
                                    instructor())
                            .getStatus())
                    .isEqualTo(302);
        }

        @Test
        void areNotWaivedInTheDatabaseEither() {
            attachBlocks();
            Waiver waiver = is(Given.Kept.class, give(Waiver.LINES_READ)).waiver();
            assertThatThrownBy(() -> jdbc.sql("""
                    insert into signoff_waivers (id, booking_id, answer_id, checks, reason, given_by, given_at, expires_at)
                    select :other, booking_id, answer_id, checks, reason, given_by, given_at, expires_at
                    from signoff_waivers where id = :id""")
                            .param("id", waiver.id())
                            .param("other", UUID.randomUUID())
                            .update())
                    .isInstanceOf(DataIntegrityViolationException.class);
        }

        @Test
        void saysAtTheBenchWhatIsAdvisedAndWasNotChecked() throws Exception {
            CellRegister register = application.getBean(CellRegister.class);
            String name = application
                    .getBean(Cells.class)
                    .find(scene().cell)
                    .orElseThrow()
                    .name();
            String edged = SampleCell.file(name, 2).replaceFirst("edges: false", "edges: true");
            register.approve(SampleCell.proposed(register, scene().cell, edged), PersonId.next(), 1);
            scene().attached();
            assertThat(answer().verdict()).isEqualTo(StoredAnswer.Verdict.WITHIN);

            String notChecked = "Not checked. Contact: The fitted tool G-02 has edges";
            assertThat(page("/bench/" + scene().cell, scene().screen)
                            .select(".caution p")
                            .eachText())
                    .anySatisfy(line -> assertThat(line).startsWith(notChecked));
            assertThat(page("/bookings/" + scene().booking + "/program", scene().noor)
                            .text())
                    .contains(notChecked);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
