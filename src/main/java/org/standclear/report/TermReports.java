package org.standclear.report;

/** Makes term reports from the record as it is now. */
public interface TermReports {

    /** The report about these days. */
    TermReport of(TermSpan span);
}
