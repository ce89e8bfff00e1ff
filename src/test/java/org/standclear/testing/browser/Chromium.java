package org.standclear.testing.browser;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The browser and its driver as installed on this machine; nothing is ever downloaded. */
record Chromium(Path browser, Path driver) {

    private static final List<String> BROWSERS = List.of("chromium", "chromium-browser", "google-chrome");
    private static final List<String> DRIVERS = List.of("chromedriver");

    /** Finds both on the search path, or nothing when one of them is missing. */
    static Optional<Chromium> installed() {
        return installedIn(Optional.ofNullable(System.getenv("PATH")).orElse("") + File.pathSeparator + "/usr/bin");
    }

    static Optional<Chromium> installedIn(String searchPath) {
        return firstOf(BROWSERS, searchPath)
                .flatMap(browser -> firstOf(DRIVERS, searchPath).map(driver -> new Chromium(browser, driver)));
    }

    private static Optional<Path> firstOf(List<String> names, String searchPath) {
        return names.stream()
                .flatMap(name -> Arrays.stream(searchPath.split(File.pathSeparator))
                        .filter(folder -> !folder.isBlank())
                        .flatMap(folder -> Stream.of(Path.of(folder, name), Path.of(folder, name + ".exe"))))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Starts a browser with an empty profile, which the driver makes and removes. */
    ChromeDriver start() {
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.toFile());
        options.setCapability("goog:loggingPrefs", logs);
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--force-prefers-reduced-motion",
                "--hide-scrollbars",
                "--lang=en-GB");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(driver.toFile())
                .build();
        return new ChromeDriver(service, options);
    }
}
