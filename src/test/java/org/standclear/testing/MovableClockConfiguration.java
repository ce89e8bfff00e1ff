package org.standclear.testing;

import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/** Puts a {@link MovableClock} in the place of the application's clock. */
@TestConfiguration(proxyBeanMethods = false)
class MovableClockConfiguration {

    @Bean
    @Primary
    MovableClock movableClock() {
        return new MovableClock();
    }
}
