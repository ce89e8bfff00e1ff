package org.standclear.testing;

import org.springframework.test.context.TestContext;
import org.springframework.test.context.TestExecutionListener;

/** Puts the movable clock back before every test, since tests share the application and its clock. */
final class ClockAtStart implements TestExecutionListener {

    @Override
    public void beforeTestMethod(TestContext testContext) {
        testContext.getApplicationContext().getBeanProvider(MovableClock.class).ifAvailable(MovableClock::moveToStart);
    }
}
