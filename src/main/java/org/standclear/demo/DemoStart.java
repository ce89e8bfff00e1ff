package org.standclear.demo;

import org.springframework.context.SmartLifecycle;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Loads the college when the application starts, before the first page can be asked for. */
@Component
@Profile("demo")
class DemoStart implements SmartLifecycle {

    private final DemoCollege college;
    private volatile boolean running;

    DemoStart(DemoCollege college) {
        this.college = college;
    }

    @Override
    public void start() {
        if (!college.isLoaded()) {
            college.load(new SeedFiles());
        }
        running = true;
    }

    @Override
    public void stop() {
        running = false;
    }

    @Override
    public boolean isRunning() {
        return running;
    }

    /** Before the web server opens its port. */
    @Override
    public int getPhase() {
        return 0;
    }
}
