package org.standclear.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Date;
import org.junit.jupiter.api.Test;
import org.standclear.architecture.planted.ImpureSum;

/** Every instant comes from the injected clock, so that a test can move time and nothing depends on the machine. */
class InjectedClockTests {

    private static final ArchRule RULE = noClasses()
            .that()
            .doNotHaveFullyQualifiedName("org.standclear.platform.time.ClockConfiguration")
            .should()
            .callMethodWhere(MachineClock.IS_READ)
            .orShould()
            .callConstructor(Date.class);

    @Test
    void nothingReadsTheMachinesClock() {
        RULE.check(MainClasses.ALL);
    }

    @Test
    void catchesOneThatDoes() {
        assertThatThrownBy(() -> RULE.check(new ClassFileImporter().importClasses(ImpureSum.class)))
                .hasMessageContaining("Instant.now()")
                .hasMessageContaining("LocalDate.now(java.time.ZoneId)");
    }
}
