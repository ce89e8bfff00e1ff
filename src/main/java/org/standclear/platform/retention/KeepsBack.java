package org.standclear.platform.retention;

/** Something for which records are kept beyond their time; every room that knows a reason answers. */
public interface KeepsBack {

    /** The reasons as they are now, read once for many records. */
    Reasons now();

    /** What is kept back. */
    interface Reasons {

        /** Why the record has to stay, in words; empty when it has not to. */
        String why(RecordKind kind, Candidate record);
    }
}
