package org.standclear.report;

/** Makes term reports from the record as it is now. */
public interface TermReports {

    /** The report about these days. */
    TermReport of(TermSpan span);

    /** What happened in these days and in how many starts: all that a term is compared by, and asked for nothing else. */
    TermReport.Happened happened(TermSpan span);
}
