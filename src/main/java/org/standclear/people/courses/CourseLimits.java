package org.standclear.people.courses;

import java.util.LinkedHashMap;
import java.util.Map;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.platform.text.PlainText;

/** What a course's limits may be; the conditions are put positively, so that NaN fails them. */
final class CourseLimits {

    private static final double FASTEST_MM_S = 10_000;

    private CourseLimits() {}

    /** What is wrong, by field; empty when the limits can be taken. */
    static Map<String, String> refuse(NewLimits asked, int longestReason) {
        Map<String, String> wrong = new LinkedHashMap<>();
        double override = asked.overridePercent();
        if (!(override > 0 && override <= 100)) {
            wrong.put("overridePercent", "Use a percentage above 0 and up to 100.");
        }
        Double speed = asked.toolSpeedMmS();
        if (speed != null && !(speed > 0 && speed <= FASTEST_MM_S)) {
            wrong.put("toolSpeedMmS", "Use a speed above 0 and up to 10 000 mm/s, or leave it empty for none.");
        }
        if (PlainText.check(asked.reason(), longestReason) instanceof PlainText.Refused refused) {
            wrong.put("reason", refused.says());
        }
        return wrong;
    }
}
