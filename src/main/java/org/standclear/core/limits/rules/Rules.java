package org.standclear.core.limits.rules;

import java.util.List;
import org.standclear.core.limits.LimitRule;

/** The rules of the check. */
public final class Rules {

    /** All rules in the order in which answers show them; every rule has something to say about every program. */
    public static final List<LimitRule> ALL = List.of(
            new PowerModeLimit(),
            new OverrideLimit(),
            new DeclarationAgreement(),
            new StartKnown(),
            new ToolSpeedLimit(),
            new MovingPartSpeedLimit(),
            new ReachLimit(),
            new AxisRangeLimit(),
            new AxisSpeedLimit(),
            new SpaceLimit(),
            new KeepOutLimit(),
            new PayloadLimit(),
            new ToolFitted(),
            new ContactSpeedLimit(),
            new SeparationDistance(),
            new Coverage(),
            new ReadingNotes(),
            new LoopNotice(),
            new UnusedPoints());

    private Rules() {}
}
