package org.standclear.platform.retention;

import java.util.List;

/** The legal holds on a record, for the page that shows it; templates reach it as {@code @holdMarks}. */
public interface HoldMarks {

    /** A line for each hold of the lab that stands on a PERSON, RUN or INCIDENT of that id; empty when there is none. */
    List<String> on(String about, Object id);
}
