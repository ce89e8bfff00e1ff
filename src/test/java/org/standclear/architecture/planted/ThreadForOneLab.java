package org.standclear.architecture.planted;

import java.util.concurrent.Executors;

/** Starts a thread of its own and forgets for which lab its work is. */
public class ThreadForOneLab {

    public void work(Runnable task) {
        Executors.newSingleThreadExecutor().execute(task);
    }
}
