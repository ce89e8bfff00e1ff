package org.standclear.platform.time;

import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Profile;

/** The one place that reads the machine's clock. */
@Configuration(proxyBeanMethods = false)
class ClockConfiguration {

    @Bean("clock")
    @Profile("!demo")
    Clock machineClock() {
        return Clock.systemUTC();
    }

    @Bean("clock")
    @Profile("demo")
    SettableClock settableClock() {
        return new SettableClock(Clock.systemUTC());
    }
}
