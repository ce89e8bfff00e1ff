package org.standclear.demo;

import java.net.URI;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.springframework.core.env.Environment;
import org.standclear.StandclearApplication;
import org.standclear.testing.MovableClock;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.web.WebUser;

/** The demo as somebody finds it who starts it at a given instant. */
record DemoAt(ConfigurableApplicationContext application) implements AutoCloseable {

    static DemoAt start(Instant instant, TestDatabase database, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                "--server.port=0",
                "--standclear.rechecks.by-themselves=true",
                "--standclear.bookings.by-themselves=true",
                "--demo.starts-at=" + instant));
        for (String property : database.asProperties()) {
            arguments.add("--" + property);
        }
        arguments.addAll(List.of(more));
        return new DemoAt(new SpringApplicationBuilder(StandclearApplication.class, ClockThere.class)
                .profiles("demo")
                .run(arguments.toArray(String[]::new)));
    }

    <T> T the(Class<T> type) {
        return application.getBean(type);
    }

    WebUser visitor() {
        return new WebUser(URI.create(address()));
    }

    String address() {
        return "http://localhost:" + application.getEnvironment().getRequiredProperty("local.server.port");
    }

    @Override
    public void close() {
        application.close();
    }

    /** Lets the clock stand at the instant that was asked for. */
    @TestConfiguration(proxyBeanMethods = false)
    static class ClockThere {

        @Bean
        @Primary
        MovableClock movableClock(Environment environment) {
            return new MovableClock(Instant.parse(environment.getRequiredProperty("demo.starts-at")));
        }
    }
}
