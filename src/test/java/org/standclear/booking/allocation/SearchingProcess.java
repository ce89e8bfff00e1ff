package org.standclear.booking.allocation;

import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.TypeExcludeFilter;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.springframework.core.type.classreading.MetadataReader;
import org.springframework.core.type.classreading.MetadataReaderFactory;
import org.standclear.StandclearApplication;
import org.standclear.booking.allocation.solver.SatAllocator;
import org.standclear.core.allocation.Allocator;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.MovableClock;

/** A process of its own that searches for a plan and waits in the middle of it, inside the solver, to be killed. */
public final class SearchingProcess {

    static final String HALF_WAY = "@@ HALF-WAY";

    private SearchingProcess() {}

    /** Arguments: the window, and who asks for the search. */
    public static void main(String[] args) throws InterruptedException {
        SpringApplication application = new SpringApplication(StandclearApplication.class, Beans.class);
        application.addInitializers(
                started -> started.getBeanFactory().registerSingleton("withoutTests", new WithoutTests()));
        ConfigurableApplicationContext context = application.run(
                "--spring.datasource.url=" + System.getProperty("database.url"),
                "--spring.datasource.username=" + System.getProperty("database.user"),
                "--spring.datasource.password=" + System.getProperty("database.password"),
                "--server.port=0",
                "--spring.main.banner-mode=off",
                "--logging.level.root=error");
        context.getBean(SearchDesk.class).begin(UUID.fromString(args[0]), 1, PersonId.of(args[1]));
        new CountDownLatch(1).await();
    }

    /** The clock of the tests, and the solver held at the first plan that it tells of. */
    @TestConfiguration(proxyBeanMethods = false)
    static class Beans {

        @Bean
        @Primary
        MovableClock movableClock() {
            return new MovableClock();
        }

        @Bean
        @Primary
        Allocator heldAllocator() {
            SatAllocator solver = new SatAllocator();
            return (problem, effort, watcher) -> solver.solve(problem, effort, new Allocator.Watcher() {
                @Override
                public void progress(Allocator.Progress progress) {
                    watcher.progress(progress);
                    System.out.println(HALF_WAY);
                    System.out.flush();
                    try {
                        new CountDownLatch(1).await();
                    } catch (InterruptedException never) {
                        throw new IllegalStateException(never);
                    }
                }

                @Override
                public boolean stopped() {
                    return watcher.stopped();
                }
            });
        }
    }

    /** Settings of other tests are no part of the application, although they stand in its packages. */
    static final class WithoutTests extends TypeExcludeFilter {

        @Override
        public boolean match(MetadataReader type, MetadataReaderFactory factory) {
            return type.getAnnotationMetadata().isAnnotated(TestConfiguration.class.getName());
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
