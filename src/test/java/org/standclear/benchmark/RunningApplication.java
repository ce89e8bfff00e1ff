package org.standclear.benchmark;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.context.TypeExcludeFilter;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.type.classreading.MetadataReader;
import org.springframework.core.type.classreading.MetadataReaderFactory;
import org.standclear.StandclearApplication;
import org.standclear.testing.TestDatabase;

/** The application inside this process, without anything that the tests would add to it. */
final class RunningApplication {

    private RunningApplication() {}

    static ConfigurableApplicationContext on(TestDatabase database) {
        return new SpringApplicationBuilder(StandclearApplication.class)
                .initializers(context -> context.getBeanFactory().registerSingleton("withoutTests", new WithoutTests()))
                .properties("server.port=0")
                .run(commandLine(database));
    }

    private static String[] commandLine(TestDatabase database) {
        String[] properties = database.asProperties();
        for (int i = 0; i < properties.length; i++) {
            properties[i] = "--" + properties[i];
        }
        return properties;
    }

    /** Leaves the test tree out of the search for components; both trees share their packages. */
    private static final class WithoutTests extends TypeExcludeFilter {

        @Override
        public boolean match(MetadataReader reader, MetadataReaderFactory factory) throws IOException {
            return reader.getResource().getURL().getPath().contains("/test-classes/");
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof WithoutTests;
        }

        @Override
        public int hashCode() {
            return WithoutTests.class.hashCode();
        }
    }
}
