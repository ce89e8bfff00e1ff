package org.standclear.signoff;

import org.springframework.stereotype.Component;
import org.standclear.platform.time.LabTime;

/** Says in one line what lapsed, when and why; with the date where that was on another day than today. */
@Component
public class LapseWords {

    private final LabTime labTime;

    LapseWords(LabTime labTime) {
        this.labTime = labTime;
    }

    /** "The release lapsed at 10:19: Not started within 10 min."; "The check lapsed on Tue 10 Mar 2026 17:40: ...". */
    public String of(Lapse lapse) {
        String when = (labTime.isToday(lapse.at()) ? " lapsed at " : " lapsed on ") + labTime.lately(lapse.at());
        return "The " + called(lapse.what()) + when + ": " + lapse.because();
    }

    private static String called(String what) {
        return what.equals("attendant") ? "e-stop attendant's signature" : what;
    }
}
