package org.standclear.incident.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentSettings;
import org.standclear.incident.RecordableOutcome;
import org.standclear.incident.ReviewLevel;
import org.standclear.incident.Severity;

/** The words and limits of incidents against the rule from which they come. */
class VocabularyTests {

    private static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");

    /** 29 CFR 1904.7(b)(1), read in a public text (grade S): the six outcomes that make a case recordable. */
    @Test
    void hasTheSixOutcomesOf1904_7() {
        assertThat(EnumSet.range(RecordableOutcome.DEATH, RecordableOutcome.SIGNIFICANT_DIAGNOSIS))
                .extracting(RecordableOutcome::name)
                .containsExactly(
                        "DEATH",
                        "DAYS_AWAY",
                        "RESTRICTED_WORK",
                        "TREATMENT_BEYOND_FIRST_AID",
                        "LOSS_OF_CONSCIOUSNESS",
                        "SIGNIFICANT_DIAGNOSIS");
        assertThat(EnumSet.range(RecordableOutcome.DEATH, RecordableOutcome.SIGNIFICANT_DIAGNOSIS))
                .allSatisfy(outcome -> assertThat(outcome.atLeast())
                        .as("%s is more than first aid", outcome)
                        .isGreaterThanOrEqualTo(IncidentClass.MEDICAL_TREATMENT));
    }

    /** 29 CFR 1904.39 (grade S): death within 8 h; hospitalisation, amputation, loss of an eye within 24 h. */
    @Test
    void putsWhatIsReportedToAnAuthorityIntoClassSeven() {
        Set<RecordableOutcome> seven = Arrays.stream(RecordableOutcome.values())
                .filter(outcome -> outcome.atLeast() == IncidentClass.REPORTABLE)
                .collect(Collectors.toSet());
        assertThat(seven)
                .containsExactlyInAnyOrder(
                        RecordableOutcome.DEATH,
                        RecordableOutcome.IN_PATIENT_HOSPITALISATION,
                        RecordableOutcome.AMPUTATION,
                        RecordableOutcome.LOSS_OF_AN_EYE);
        assertThat(String.join(" ", AuthorityQuestions.list()))
                .contains("8 hours", "24 hours", "amputation", "eye", "hospital")
                .as("it asks and does not decide")
                .doesNotContain("must be reported", "has to be reported", "need not be reported");
        assertThat(AuthorityQuestions.list())
                .allSatisfy(line -> assertThat(line).contains("?"));
    }

    /** The lab's own rules of class, hold and form; no source outside. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "OBSERVATION, 0, false, false, 2026-03-12T00:00:00Z",
                "NEAR_MISS, 1, false, false, 2026-03-12T00:00:00Z",
                "PRECAUTIONARY_STOP, -, false, false, -",
                "PROTECTIVE_STOP, 2, true, false, 2026-03-12T00:00:00Z",
                "CONTACT, 3, true, true, 2026-03-11T14:07:00Z",
                "PROPERTY_DAMAGE, 4, true, true, 2026-03-11T14:07:00Z",
                "FIRST_AID, 5, true, true, 2026-03-12T10:07:00Z",
                "MEDICAL_TREATMENT, 6, true, true, 2026-03-12T10:07:00Z",
                "REPORTABLE, 7, true, true, 2026-03-11T10:07:00Z",
            })
    void knowsHoldFreezeAndDueTime(
            IncidentClass kind, @Nullable Integer number, boolean freezes, boolean holds, @Nullable Instant due) {
        assertThat(kind.number()).isEqualTo(number);
        assertThat(kind.freezesEvidence()).isEqualTo(freezes);
        assertThat(kind.holdsCell()).isEqualTo(holds);
        assertThat(kind.formDue().after(Instant.parse("2026-03-11T10:07:00Z"), ZONE, IncidentSettings.DEFAULTS))
                .isEqualTo(due);
        assertThat(IncidentClass.of(kind.code())).contains(kind);
    }

    /** The same day ends at the lab's midnight, also on the day on which clocks change (29 March 2026, one hour less). */
    @Test
    void endsTheDayAtTheLabsMidnight() {
        assertThat(IncidentClass.NEAR_MISS
                        .formDue()
                        .after(Instant.parse("2026-03-29T00:30:00Z"), ZONE, IncidentSettings.DEFAULTS))
                .isEqualTo(Instant.parse("2026-03-29T23:00:00Z"));
    }

    /** Common practice, no source: the depth follows the worse of what happened and what could have. */
    @ParameterizedTest
    @CsvSource({
        "NEAR_MISS, NONE, FIRST_AID, READ",
        "NEAR_MISS, NONE, TREATMENT, REVIEW",
        "NEAR_MISS, NONE, LASTING, FULL_REVIEW",
        "NEAR_MISS, NONE, DEATH, FULL_REVIEW",
        "CONTACT, NONE, NONE, REVIEW",
        "CONTACT, NONE, LASTING, FULL_REVIEW",
        "MEDICAL_TREATMENT, LASTING, TREATMENT, FULL_REVIEW",
        "REPORTABLE, NONE, NONE, FULL_REVIEW",
        "OBSERVATION, DAMAGE, NONE, READ",
    })
    void reviewsByPotential(IncidentClass kind, Severity actual, Severity foreseeable, ReviewLevel level) {
        var form = new org.standclear.incident.Incident.Form("story", "", actual, foreseeable, Set.of());
        assertThat(ReviewRules.level(kind, form)).isEqualTo(level);
    }

    @Test
    void asksEveryNumberedClassInTheirOrder() {
        List<Integer> numbers = Arrays.stream(IncidentClass.values())
                .map(IncidentClass::number)
                .filter(java.util.Objects::nonNull)
                .toList();
        assertThat(numbers).containsExactly(0, 1, 2, 3, 4, 5, 6, 7);
    }
}
