package org.standclear.architecture.planted.upper;

/** What the lower module must not know. */
public record Above(String name) {}
