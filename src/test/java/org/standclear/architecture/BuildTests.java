package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The build itself asks for what the house promises: formatting, nullness and the language level. */
class BuildTests {

    @Test
    void checksTheFormattingOfEveryBuild() throws Exception {
        assertThat(Pom.ofPlugin("spotless-maven-plugin", "//execution/goals/goal"))
                .isEqualTo("check");
        assertThat(Pom.ofPlugin("spotless-maven-plugin", "//execution/phase")).isEqualTo("verify");
        assertThat(Pom.ofPlugin("spotless-maven-plugin", "//java/palantirJavaFormat/version"))
                .isNotEmpty();
    }

    @Test
    void refusesNullWhereItIsNotDeclared() throws Exception {
        assertThat(Pom.ofPlugin("maven-compiler-plugin", "//compilerArgs/arg[contains(., 'ErrorProne')]"))
                .contains("-Xep:NullAway:ERROR", "OnlyNullMarked=true");
        assertThat(Pom.ofPlugin("maven-failsafe-plugin", "//execution[id='nullness']//include"))
                .isEqualTo("**/NullnessIT.java");
        assertThat(Pom.ofPlugin("maven-failsafe-plugin", "//execution[id='nullness']//additionalClasspathDependencies"))
                .contains("error_prone_core", "nullaway");
    }

    @Test
    void staysAtJava17() throws Exception {
        assertThat(Pom.text("/project/properties/java.version")).isEqualTo("17");
        assertThat(Pom.ofPlugin("maven-compiler-plugin", "/configuration/release"))
                .isEqualTo("17");
    }

    @Test
    void runsOnABareMachineWhatTheReadmeSays() throws Exception {
        Path script = Path.of(".ci", "run");
        Process syntax =
                new ProcessBuilder("bash", "-n", script.toString()).inheritIO().start();

        assertThat(syntax.waitFor()).isZero();
        assertThat(script).isExecutable();
        assertThat(TextFile.read(script).lines())
                .contains("export CI=true")
                .last()
                .asString()
                .endsWith("mvn -B -ntp verify");
    }
}
