package org.standclear.core.motion;

/**
 * Under what a move runs.
 *
 * @param override part of the speed, above 0 and at most 1
 * @param ceiling what reduced power holds the tool point to, mm/s; infinite when nothing holds it
 * @param overhangMm of the fitted tool
 */
record MoveConditions(double override, double ceiling, double overhangMm) {}
