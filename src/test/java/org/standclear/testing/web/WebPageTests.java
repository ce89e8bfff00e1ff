package org.standclear.testing.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

class WebPageTests {

    private static final WebPage PAGE = new WebPage(200, "/book", "", """
            <html><head><title>Book</title></head><body><h1>Book a slot</h1>
            <form action="/sign-out" method="post"><button>Sign out</button></form>
            <form action="/book?day=1" method="post">
              <input type="hidden" name="_csrf" value="abc"><input name="who" value="Noor &amp; Mateo">
              <select name="cell"><option value="a">A</option><option value="b" selected>B</option></select>
              <input type="checkbox" name="needsAttendant"><textarea name="note">x</textarea>
              <button>Book</button>
            </form></body></html>""");

    @Test
    void sendsWhatABrowserWouldSend() {
        assertThat(PAGE.form("/book").values())
                .containsExactly(
                        Map.entry("_csrf", "abc"),
                        Map.entry("who", "Noor & Mateo"),
                        Map.entry("cell", "b"),
                        Map.entry("note", "x"));
        assertThat(PAGE.form("/book").with("who", "a b").encoded()).isEqualTo("_csrf=abc&who=a+b&cell=b&note=x");
    }

    @Test
    void readsTheTitleAndTheWords() {
        assertThat(PAGE.title()).isEqualTo("Book");
        assertThat(PAGE.text()).startsWith("Book a slot");
    }

    @Test
    void saysWhatThePageReadsWhenAFormIsMissing() {
        assertThatThrownBy(() -> PAGE.form("/cancel")).hasMessageContaining("Book a slot");
    }

    @Test
    void tellsKindsOfPagesApart() {
        assertThat(SiteWalk.kindOf("/runs/0190f3a2-0000-7000-8000-00000000002a/log?from=3#end"))
                .isEqualTo("/runs/{id}/log");
        assertThat(SiteWalk.kindOf("/today/2026-03-11")).isEqualTo("/today/{n}");
        assertThat(SiteWalk.kindOf("/cells")).isEqualTo("/cells");
    }
}
