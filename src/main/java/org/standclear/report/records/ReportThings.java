package org.standclear.report.records;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab questions and signatures under the week belong to. */
@Component
class ReportThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(Kind.own("report_questions"), Kind.own("report_exception_readings"));
    }
}
