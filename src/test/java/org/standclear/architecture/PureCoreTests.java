package org.standclear.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;
import org.standclear.architecture.planted.ImpureSum;

/** The computation in {@code core} is plain Java: the same input gives the same answer, anywhere and at any time. */
class PureCoreTests {

    private static final String CORE = "org.standclear.core..";

    /** Libraries that compute or read characters, and touch nothing outside. */
    private static final String[] OTHERS = {
        CORE,
        "java..",
        "org.jspecify..",
        "org.snakeyaml.engine..",
        "com.google.re2j..",
        "org.apache.commons.statistics.."
    };

    private static final DescribedPredicate<JavaClass> OUTSIDE_WORLD = resideInAPackage("java.io..")
            .or(resideInAPackage("java.nio..").and(resideOutsideOfPackages("java.nio.charset..")))
            .or(resideInAPackage("java.net.."))
            .or(resideInAPackage("java.sql.."))
            .as("files, network or database");

    private static ArchRule knowsOnlyPlainJava(String packages) {
        return classes()
                .that()
                .resideInAPackage(packages)
                // the package's own mark says to the module test that everybody may use it
                .and()
                .doNotHaveSimpleName("package-info")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(OTHERS)
                .allowEmptyShould(true);
    }

    private static ArchRule staysInside(String packages) {
        return noClasses()
                .that()
                .resideInAPackage(packages)
                // reads a resource of its own package, which is as much a part of the program as its classes
                .and()
                .doNotHaveFullyQualifiedName("org.standclear.core.limits.ShippedContactTable")
                .should()
                .dependOnClassesThat(OUTSIDE_WORLD)
                .allowEmptyShould(true);
    }

    private static ArchRule readsNoClock(String packages) {
        return noClasses()
                .that()
                .resideInAPackage(packages)
                .should()
                .callMethodWhere(MachineClock.IS_READ)
                .orShould()
                .callMethod(System.class, "nanoTime")
                .allowEmptyShould(true);
    }

    @Test
    void knowsOnlyPlainJava() {
        knowsOnlyPlainJava(CORE).check(MainClasses.ALL);
    }

    @Test
    void staysInside() {
        staysInside(CORE).check(MainClasses.ALL);
    }

    @Test
    void readsNoClock() {
        readsNoClock(CORE).check(MainClasses.ALL);
    }

    @Test
    void catchesAnImpureComputation() {
        JavaClasses planted = new ClassFileImporter().importClasses(ImpureSum.class);
        String there = "org.standclear.architecture.planted..";

        assertThatThrownBy(() -> staysInside(there).check(planted)).hasMessageContaining("java.io.File");
        assertThatThrownBy(() -> readsNoClock(there).check(planted)).hasMessageContaining("Instant.now()");
        JavaClasses springs = new ClassFileImporter().importPackages("org.standclear.platform.time");
        assertThatThrownBy(() -> knowsOnlyPlainJava("org.standclear.platform..").check(springs))
                .hasMessageContaining("org.springframework");
    }

    @Test
    void looksAtTheWholeOfCore() {
        assertThat(MainClasses.ALL.stream().filter(type -> type.getPackageName().startsWith("org.standclear.core")))
                .hasSizeGreaterThan(100);
        assertThat(MainClasses.ALL.size()).isGreaterThan(400);
    }
}
