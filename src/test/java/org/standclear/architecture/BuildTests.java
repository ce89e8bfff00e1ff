package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** The build itself asks for what the house promises: formatting, nullness and the language level. */
class BuildTests {

    private static String pom(String xpath) throws Exception {
        Document pom = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(Path.of("pom.xml").toFile());
        return (String) XPathFactory.newInstance().newXPath().evaluate(xpath, pom, XPathConstants.STRING);
    }

    private static String plugin(String artifact, String below) throws Exception {
        return pom("/project/build/plugins/plugin[artifactId='" + artifact + "']" + below);
    }

    @Test
    void checksTheFormattingOfEveryBuild() throws Exception {
        assertThat(plugin("spotless-maven-plugin", "//execution/goals/goal")).isEqualTo("check");
        assertThat(plugin("spotless-maven-plugin", "//execution/phase")).isEqualTo("verify");
        assertThat(plugin("spotless-maven-plugin", "//java/palantirJavaFormat/version"))
                .isNotEmpty();
    }

    @Test
    void refusesNullWhereItIsNotDeclared() throws Exception {
        assertThat(plugin("maven-compiler-plugin", "//compilerArgs/arg[contains(., 'ErrorProne')]"))
                .contains("-Xep:NullAway:ERROR", "OnlyNullMarked=true");
    }

    @Test
    void staysAtJava17() throws Exception {
        assertThat(pom("/project/properties/java.version")).isEqualTo("17");
        assertThat(plugin("maven-compiler-plugin", "/configuration/release")).isEqualTo("17");
    }
}
