package org.standclear.testing;

import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** Gives each test context an empty database of its own on the real PostgreSQL server. */
final class FreshPostgres implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        TestPropertyValues.of(RealPostgres.freshDatabase().asProperties()).applyTo(context);
    }
}
