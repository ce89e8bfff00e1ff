package org.standclear.report;

import java.time.LocalDate;

/** Looks at how bench lists were signed. */
public interface SignoffQualities {

    /** Of the week that begins on that Monday. */
    SignoffQuality week(LocalDate monday);
}
