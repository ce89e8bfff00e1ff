package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** Templates carry no script or style of their own, and nothing a person typed is ever written as markup. */
class TemplatesTests {

    private static final List<TextFile> TEMPLATES = TextFile.below("src/main/resources/templates", ".html");
    private static final Pattern UNESCAPED = Pattern.compile("\\[\\(");
    private static final Pattern HANDLER_BY_ATTR = Pattern.compile("\\b(on[a-z]+|style)\\s*=");

    private static List<String> faults(TextFile file) {
        List<String> faults = new ArrayList<>();
        for (Element element : Jsoup.parse(file.text()).getAllElements()) {
            if (element.normalName().equals("style")) {
                faults.add(file.path() + ": a style element");
            }
            if (element.normalName().equals("script") && !element.data().isBlank()) {
                faults.add(file.path() + ": a script with text");
            }
            element.attributes()
                    .forEach(attribute -> fault(attribute).forEach(fault -> faults.add(file.path() + ": " + fault)));
        }
        if (UNESCAPED.matcher(file.text()).find()) {
            faults.add(file.path() + ": unescaped inlining");
        }
        return faults;
    }

    private static List<String> fault(Attribute attribute) {
        String key = attribute.getKey().toLowerCase(Locale.ROOT);
        String name = key.startsWith("th:") ? key.substring(3) : key;
        String value = attribute.getValue().toLowerCase(Locale.ROOT);
        boolean bad = name.startsWith("on")
                || name.startsWith("hx-on")
                || name.equals("style")
                || name.equals("styleappend")
                || name.equals("utext")
                || value.strip().startsWith("javascript:")
                || (name.startsWith("attr") && HANDLER_BY_ATTR.matcher(value).find());
        return bad ? List.of(key + "=\"" + attribute.getValue() + "\"") : List.of();
    }

    /** A replaced element never asks its own condition: the condition belongs on a block around it. */
    private static List<String> conditionsNeverAsked(String html) {
        return Jsoup.parse(html).getAllElements().stream()
                .filter(element -> element.hasAttr("th:replace"))
                .filter(element -> element.hasAttr("th:if") || element.hasAttr("th:unless"))
                .map(Element::toString)
                .toList();
    }

    @Test
    void askEveryCondition() {
        assertThat(TEMPLATES.stream().flatMap(file -> conditionsNeverAsked(file.text()).stream()))
                .isEmpty();
        assertThat(conditionsNeverAsked("<p th:if='${a}' th:replace='~{b}'></p>"))
                .hasSize(1);
    }

    @Test
    void carryNoScriptOrStyle() {
        assertThat(TEMPLATES).hasSizeGreaterThan(30);
        assertThat(TEMPLATES.stream().flatMap(file -> faults(file).stream())).isEmpty();
    }

    /** Posting forms that act twice when sent twice, or that the application would refuse for want of its own token. */
    private static List<String> loosePosts(TextFile file) {
        List<String> faults = new ArrayList<>();
        for (Element form : Jsoup.parse(file.text()).select("form[method=post]")) {
            String action = form.attr("th:action");
            boolean acts = !action.contains("/sign-in") && !action.contains("/sign-out");
            if (action.isEmpty()) {
                faults.add(file.path() + ": a form without th:action gets no CSRF token");
            } else if (acts && !form.html().contains("formToken")) {
                faults.add(file.path() + ": the form for " + action + " carries no formToken");
            }
        }
        return faults;
    }

    @Test
    void postOnce() {
        assertThat(TEMPLATES.stream().flatMap(file -> loosePosts(file).stream()))
                .isEmpty();
    }

    @Test
    void catchesAFormThatActsTwice() {
        assertThat(loosePosts(template("<form method=\"post\" th:action=\"@{/book}\"></form>")))
                .hasSize(1);
        assertThat(loosePosts(template("<form method=\"POST\" action=\"/book\"></form>")))
                .hasSize(1);
        assertThat(
                        loosePosts(
                                template(
                                        "<form method=\"post\" th:action=\"@{/book}\"><input th:replace=\"~{layout/parts :: formToken}\"></form>")))
                .isEmpty();
        assertThat(loosePosts(template("<form method=\"post\" th:action=\"@{/sign-out}\"></form>")))
                .isEmpty();
        assertThat(loosePosts(template("<form method=\"get\" th:action=\"@{/book}\"></form>")))
                .isEmpty();
    }

    private static TextFile template(String html) {
        return new TextFile(Path.of("planted.html"), html);
    }

    private static List<String> planted(String html) {
        return faults(template(html));
    }

    @Test
    void catchesEachKind() {
        assertThat(planted("<style>p { color: red }</style>")).hasSize(1);
        assertThat(planted("<p style=\"color: red\">x</p>")).hasSize(1);
        assertThat(planted("<p th:style=\"${a}\">x</p>")).hasSize(1);
        assertThat(planted("<script>alert(1)</script>")).hasSize(1);
        assertThat(planted("<p onclick=\"go()\">x</p>")).hasSize(1);
        assertThat(planted("<p hx-on:click=\"go()\">x</p>")).hasSize(1);
        assertThat(planted("<p th:attr=\"onclick=${a}\">x</p>")).hasSize(1);
        assertThat(planted("<a href=\"javascript:go()\">x</a>")).hasSize(1);
        assertThat(planted("<p th:utext=\"${a}\">x</p>")).hasSize(1);
        assertThat(planted("<p>[(${a})]</p>")).hasSize(1);
    }

    @Test
    void allowsTheRest() {
        assertThat(
                        planted(
                                "<html lang=\"en\"><script src=\"/a.js\" defer></script><p th:text=\"${a}\" class=\"b\">[[${c}]]</p></html>"))
                .isEmpty();
    }
}
