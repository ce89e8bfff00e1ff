package org.standclear.core.allocation;

/** A turn with its place: on that cell, at that time, with that person at the e-stop. */
public record Placed(String turn, String cell, Span span, String attendant) {}
