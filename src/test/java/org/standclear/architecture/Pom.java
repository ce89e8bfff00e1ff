package org.standclear.architecture;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathExpressionException;
import javax.xml.xpath.XPathFactory;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** The build file, as the rules about the build read it. */
final class Pom {

    private Pom() {}

    /** The text of the first element that the XPath names, or an empty text. */
    static String text(String xpath) throws Exception {
        List<String> texts = texts(xpath);
        return texts.isEmpty() ? "" : texts.get(0);
    }

    /** The same below a plug-in of the build. */
    static String ofPlugin(String artifact, String xpath) throws Exception {
        return text("/project/build/plugins/plugin[artifactId='" + artifact + "']" + xpath);
    }

    static List<String> compilerArguments() throws Exception {
        return texts("/project/build/plugins/plugin[artifactId='maven-compiler-plugin']//compilerArgs/arg");
    }

    private static List<String> texts(String xpath) throws Exception {
        Document pom = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(Path.of("pom.xml").toFile());
        NodeList nodes = nodes(pom, xpath);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent().strip());
        }
        return texts;
    }

    private static NodeList nodes(Document pom, String xpath) throws XPathExpressionException {
        return (NodeList) XPathFactory.newInstance().newXPath().evaluate(xpath, pom, XPathConstants.NODESET);
    }
}
