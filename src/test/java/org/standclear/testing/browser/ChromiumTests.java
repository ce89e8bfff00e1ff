package org.standclear.testing.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChromiumTests {

    @TempDir
    Path folder;

    private void install(String name) throws IOException {
        assertThat(Files.createFile(folder.resolve(name)).toFile().setExecutable(true))
                .isTrue();
    }

    @Test
    void needsBothTheBrowserAndItsDriver() throws IOException {
        install("chromium");
        assertThat(Chromium.installedIn(folder.toString())).isEmpty();

        install("chromedriver");
        assertThat(Chromium.installedIn(folder.toString()))
                .hasValue(new Chromium(folder.resolve("chromium"), folder.resolve("chromedriver")));
    }

    @Test
    void skipsWithAReasonWhereThereIsNone() {
        var result = BrowserExtension.decide(Optional.empty(), false);

        assertThat(result.isDisabled()).isTrue();
        assertThat(result.getReason()).hasValue("chromium and chromedriver are not both installed");
    }

    @Test
    void failsWhereTheyAreRequired() {
        assertThatThrownBy(() -> BrowserExtension.decide(Optional.empty(), true))
                .hasMessageContaining("CI=true");
    }

    @Test
    void writesQuotesAsXPath() {
        assertThat(Words.literal("Operator's name")).isEqualTo("concat('Operator', \"'\", 's name')");
    }
}
