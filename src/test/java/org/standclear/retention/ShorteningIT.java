package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.SecondLab;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.retention.RecordKind;
import org.standclear.retention.Shortenings.Proposed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** A shorter time takes two people, whoever asks for it and however. */
class ShorteningIT {

    abstract static class Cases extends RetentionCases {

        private static final RecordKind KIND = RecordKind.DUTY_PERIODS;

        private UUID proposed(KeepingTime time) {
            Proposed outcome =
                    shortenings.propose(KIND, time, rules.inForce(KIND).number(), marit.id(), "a test");
            return is(Proposed.Waits.class, outcome).id();
        }

        /** Ten years, whatever other tests left behind. */
        private void tenYears() {
            keepOnly(KIND, KeepingTime.years(10));
        }

        @Test
        void holdsOnlyWhenASecondPersonHasApprovedIt() {
            tenYears();
            UUID id = proposed(KeepingTime.years(2));
            assertThat(rules.inForce(KIND).time()).isEqualTo(KeepingTime.years(10));

            assertThat(shortenings.approve(id, marit.id()))
                    .hasValueSatisfying(says -> assertThat(says).contains("second person"));
            assertThat(rules.inForce(KIND).time()).isEqualTo(KeepingTime.years(10));
            assertThat(shortenings.approve(id, ines.id())).isEmpty();
            assertThat(rules.inForce(KIND).time()).isEqualTo(KeepingTime.years(2));
            assertThat(shortenings.approve(id, ines.id())).isPresent();

            KeepingRules.Change change = rules.changes(KIND, 1).get(0);
            assertThat(change.by()).isEqualTo(marit.id());
            assertThat(change.approvedBy()).isEqualTo(ines.id());
            assertThat(kindsAbout(id)).containsExactly("retention.shortening-proposed");
            assertTrailIsWhole();
        }

        private List<String> kindsAbout(UUID subject) {
            return application
                    .getBean(TrailReader.class)
                    .about(everyLab.theLab().id(), subject.toString())
                    .stream()
                    .map(RecordedEntry::kind)
                    .toList();
        }

        @Test
        void theRulesThemselvesTakeNoShorterTimeFromOnePerson() {
            tenYears();
            int number = rules.inForce(KIND).number();
            assertThatThrownBy(() -> rules.change(KIND, KeepingTime.years(9), number, marit.id(), "alone"))
                    .hasMessageContaining("second person");
            assertThat(rules.inForce(KIND).number()).isEqualTo(number);
            assertThat(rules.change(KIND, KeepingTime.years(11), number, marit.id(), "alone"))
                    .isTrue();
            assertThat(rules.changes(KIND, 1).get(0).approvedBy()).isNull();
        }

        @Test
        void theDatabaseRefusesAnApprovalByWhoProposed() {
            tenYears();
            UUID id = proposed(KeepingTime.years(2));
            assertThatThrownBy(() -> jdbc.sql("""
                                    update retention_proposals set state = 'APPROVED', decided_by = proposed_by,
                                        decided_at = current_timestamp, decision_reason = '' where id = :id""").param("id", id).update()).isInstanceOf(DataAccessException.class);
            assertThat(shortenings.reject(id, "Not needed", marit.id())).isEmpty();
            assertThat(shortenings.find(id).orElseThrow().isOpen()).isFalse();
            assertThat(shortenings.approve(id, ines.id())).isPresent();
            assertThat(kindsAbout(id))
                    .containsExactly("retention.shortening-proposed", "retention.shortening-rejected");
        }

        @Test
        void isPastWhenAnotherTimeWasPutInForceMeanwhile() {
            tenYears();
            int number = rules.inForce(KIND).number();
            UUID id = proposed(KeepingTime.years(2));
            assertThat(shortenings.propose(KIND, KeepingTime.years(3), number, marit.id(), "a second"))
                    .isInstanceOf(Proposed.Refused.class);
            assertThat(rules.change(KIND, KeepingTime.years(12), number, marit.id(), "longer"))
                    .isTrue();
            assertThat(shortenings.approve(id, ines.id())).isPresent();
            assertThat(rules.inForce(KIND).time()).isEqualTo(KeepingTime.years(12));
            assertThat(shortenings.propose(KIND, KeepingTime.years(2), number, marit.id(), "old form"))
                    .isInstanceOf(Proposed.Stale.class);
            assertThat(shortenings.reject(id, "past", ines.id())).isEmpty();
        }

        @Test
        void isTheLabsOwn() {
            tenYears();
            UUID id = proposed(KeepingTime.years(2));
            LabId other = SecondLab.empty(application, "America/Halifax");
            LabScope.run(other, () -> {
                assertThat(shortenings.find(id)).isEmpty();
                assertThat(shortenings.open()).isEmpty();
            });
            assertThat(shortenings.reject(id, "done", ines.id())).isEmpty();
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
