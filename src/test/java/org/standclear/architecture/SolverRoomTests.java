package org.standclear.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleName;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;

/** The wall between how a plan is made and the windows that it is made for. */
class SolverRoomTests {

    private static final String SOLVER = "org.standclear.booking.allocation.solver..";
    private static final String LIBRARY = "com.google.ortools..";

    private static final JavaClasses ROOMS = MainClasses.ALL.that(not(simpleName("package-info")));

    private static ArchRule knowsOnlyTheProblem(String packages) {
        return classes()
                .that()
                .resideInAPackage(packages)
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        SOLVER,
                        "org.standclear.core.allocation..",
                        "java.lang..",
                        "java.time..",
                        "java.util..",
                        "org.jspecify..",
                        "org.springframework.stereotype..",
                        LIBRARY,
                        "com.google.protobuf..");
    }

    private static ArchRule nobodyElseKnowsTheLibrary(String solver) {
        return noClasses()
                .that(not(resideInAPackage(solver)))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(LIBRARY);
    }

    @Test
    void plansAreMadeFromTheProblemAlone() {
        knowsOnlyTheProblem(SOLVER).check(ROOMS);
    }

    @Test
    void nobodyElseKnowsTheLibrary() {
        nobodyElseKnowsTheLibrary(SOLVER).check(ROOMS);
    }

    @Test
    void seesWhatBreaksTheRules() {
        assertThatThrownBy(() -> knowsOnlyTheProblem("org.standclear.booking.allocation..")
                        .check(ROOMS))
                .hasMessageContaining("org.standclear.booking.allocation.WindowProblem");
        assertThatThrownBy(
                        () -> nobodyElseKnowsTheLibrary("org.standclear.core..").check(ROOMS))
                .hasMessageContaining("org.standclear.booking.allocation.solver.SatModel");
    }
}
