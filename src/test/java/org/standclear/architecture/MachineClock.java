package org.standclear.architecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import java.time.Clock;
import java.util.Set;

/** The calls that ask the machine what time it is instead of the injected clock. */
final class MachineClock {

    private static final Set<String> FACTORIES =
            Set.of("systemUTC", "systemDefaultZone", "system", "tickMillis", "tickSeconds", "tickMinutes");

    static final DescribedPredicate<JavaMethodCall> IS_READ =
            DescribedPredicate.describe("reads the machine's clock", MachineClock::isRead);

    private MachineClock() {}

    private static boolean isRead(JavaMethodCall call) {
        String owner = call.getTargetOwner().getName();
        String method = call.getName();
        if (owner.equals(Clock.class.getName())) {
            return FACTORIES.contains(method);
        }
        if (owner.startsWith("java.time.") && method.equals("now")) {
            return call.getTarget().getRawParameterTypes().stream().noneMatch(type -> type.isEquivalentTo(Clock.class));
        }
        return owner.equals(System.class.getName()) && method.equals("currentTimeMillis");
    }
}
