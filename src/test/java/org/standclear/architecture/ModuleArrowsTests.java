package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.modulith.ApplicationModule.Type;
import org.springframework.modulith.core.ApplicationModule;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.modulith.core.Violations;
import org.standclear.StandclearApplication;

/** Features look downwards only; the floors are those of the drawing in DEVELOPERS.md. */
class ModuleArrowsTests {

    /** From the ground up; modules of one floor do not know each other, save that a cell's page may name people. */
    private static final List<Set<String>> FLOORS = List.of(
            Set.of("core"),
            Set.of("platform"),
            Set.of("trail"),
            Set.of("cell", "people"),
            Set.of("program", "message"),
            Set.of("check", "booking"),
            Set.of("signoff"),
            Set.of("run"),
            Set.of("incident"),
            Set.of("desk", "report", "retention"),
            Set.of("demo", "commandline"));

    private static final ApplicationModules MODULES = ApplicationModules.of(StandclearApplication.class);

    static List<ApplicationModule> modules() {
        return MODULES.stream().toList();
    }

    @Test
    void theArrowsHold() {
        MODULES.verify();
    }

    @Test
    void findsTheFeatures() {
        Set<String> found = modules().stream()
                .map(module -> module.getIdentifier().toString())
                .collect(Collectors.toSet());

        assertThat(found)
                .contains(
                        "core",
                        "platform",
                        "trail",
                        "cell",
                        "people",
                        "program",
                        "check",
                        "booking",
                        "signoff",
                        "run",
                        "incident",
                        "desk");
        assertThat(found).isSubsetOf(FLOORS.stream().flatMap(Set::stream).collect(Collectors.toSet()));
    }

    @ParameterizedTest
    @MethodSource("modules")
    void saysWhatItMayUse(ApplicationModule module) {
        String name = module.getIdentifier().toString();
        var declared = module.getBasePackage().getAnnotation(org.springframework.modulith.ApplicationModule.class);

        assertThat(declared).as("@ApplicationModule on the package of %s", name).isPresent();
        assertThat(declared.get().allowedDependencies())
                .as("allowedDependencies of %s: the default allows everything", name)
                .doesNotContain("¯\\_(ツ)_/¯");
        assertThat(declared.get().type())
                .as("only the ground is open to all")
                .isEqualTo(Set.of("core", "platform").contains(name) ? Type.OPEN : Type.CLOSED);
    }

    @ParameterizedTest
    @MethodSource("modules")
    void mayUseOnlyWhatIsBelow(ApplicationModule module) {
        String name = module.getIdentifier().toString();
        module.getBasePackage()
                .getAnnotation(org.springframework.modulith.ApplicationModule.class)
                .ifPresent(declared -> assertThat(Arrays.asList(declared.allowedDependencies()))
                        .as("what %s may use", name)
                        .isSubsetOf(below(name)));
    }

    private static Set<String> below(String name) {
        Set<String> below = new TreeSet<>();
        for (Set<String> floor : FLOORS) {
            if (floor.contains(name)) {
                break;
            }
            below.addAll(floor);
        }
        return below;
    }

    @Test
    void catchesAModuleThatLooksUp() {
        ImportOption everything = location -> true;
        ApplicationModules planted = ApplicationModules.of("org.standclear.architecture.planted", everything);

        assertThatThrownBy(planted::verify)
                .isInstanceOf(Violations.class)
                .hasMessageContaining("Module 'lower' depends on module 'upper'");
    }

    @Test
    void knowsWhatIsBelow() {
        assertThat(below("booking")).contains("cell", "people", "program").doesNotContain("check", "signoff");
        assertThat(below("core")).isEmpty();
    }
}
