package org.standclear.core.program;

/**
 * Something a program file states about how it will be run, to be held against the declaration.
 *
 * @param value of the type that the field has in a {@link Declaration}
 * @param line counted from 1
 * @param fromStep the step before which it stands: it holds from there on
 */
public record Found(DeclarationField field, Object value, int line, int fromStep) {}
