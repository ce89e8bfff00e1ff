package org.standclear.core.allocation;

/** A slot of a cell that can be given to somebody. */
public record FreeSlot(String cell, Span span) {}
