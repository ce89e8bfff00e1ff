package org.standclear.core.program;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.ToolPose;

/**
 * A named place of the tool point.
 *
 * @param elbow null when the file names no side
 * @param line where the file defines it, counted from 1
 */
public record Point(String name, ToolPose pose, @Nullable Elbow elbow, int line) {}
