package org.standclear.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalPathTests {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/..//example.org",
                "/bench/../..//example.org",
                "/bench//example.org",
                "/bench/..",
                "/./bench",
                "/bench/..;x/me",
                "/bench/%2e%2E/me",
                "/bench/%2Fexample.org",
                "/bench/%5cexample.org",
                "//example.org",
                "/\\example.org",
                "https://example.org/",
                "/sign-in"
            })
    void refusesWhatCouldLeadElsewhere(String asked) {
        assertThat(LocalPath.of(asked)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/me/pin?chosen", "/runs?from=a//b/../c", "/cells/c-1.2/show", "/book?x=%2F", "/a..b"})
    void keepsWhatIsHere(String asked) {
        assertThat(LocalPath.of(asked)).contains(asked);
    }
}
