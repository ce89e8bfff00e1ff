package org.standclear.testing;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.ActiveProfiles;
import org.springframework.test.context.ContextConfiguration;

/**
 * Runs a test class against the demo college on H2. Every class so marked shares one
 * running application (a port for real requests, and MockMvc), so a test makes people, cells and bookings of its own and
 * leaves those of others alone. The clock is a {@link MovableClock} and stands at its start when a test begins.
 */
@Documented
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT)
@AutoConfigureMockMvc
@Import({MovableClockConfiguration.class, LightPasswords.class})
@ContextConfiguration(initializers = FreshH2.class)
@ActiveProfiles("demo")
public @interface DemoOnH2 {}
