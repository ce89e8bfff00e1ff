package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.down;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.cell.ContactLimit;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.ContactSpeeds;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.motion.Peaks;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.quantity.Tolerance;
import org.standclear.core.text.Words;

/** The held fastest part is at or below the permitted speed of every listed region (ISO/TS 15066:2016 Annex A). */
final class ContactSpeedLimit implements LimitRule {

    /** What the formula leaves out: a caught part cannot give way, and a lasting force may be half the transient one. */
    private static final String ESTIMATE =
            " Estimate; release by force and pressure measurement. It is for a part of the"
                    + " body that can give way: caught between tool and table it bears half the force, so half the speed.";

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        ContactLimit contact = program.cell().limits().contact();
        if (contact == null) {
            return Stream.of(new Finding.Notice(Details.of(Check.CONTACT, "No limit set for contact.")));
        }
        Double part = program.part().massKg();
        // without a declared part the arm is lighter than it will be, so what is too fast then is too fast anyway
        ContactSpeeds.Permitted least = ContactSpeeds.with(program, part == null ? 0 : part).stream()
                .min(Comparator.comparingDouble(ContactSpeeds.Permitted::permittedMmS))
                .orElseThrow();
        return Stream.of(finding(program, contact, least, part));
    }

    private static Finding finding(
            CheckedProgram program, ContactLimit contact, ContactSpeeds.Permitted least, @Nullable Double part) {
        double fastest = program.figures().knownFastestMmS();
        String estimate = ESTIMATE + unlisted(contact) + values(program, contact, least.region());
        String region = least.region().word();
        Optional<StepMotion> at = program.motion().stepOfGreatest(Peaks::fastest);
        Double observed = program.figures().fastestMmS();
        if (!(least.permittedMmS() > 0)) {
            String says = "No contact with " + region + " is permitted at any speed; it cannot be listed for contact."
                    + estimate;
            return Finding.notKept(contact.rule(), details(observed, 0, says));
        }
        if (!Tolerance.isWithin(fastest, least.permittedMmS())) {
            String says = "The fastest part reaches " + up(fastest, 1) + " mm/s" + Places.in(at) + "; "
                    + down(least.permittedMmS(), 1) + " mm/s is permitted for " + region
                    + ". Lower the speed of the step, or the override." + estimate;
            return Finding.notKept(contact.rule(), Places.at(details(fastest, least.permittedMmS(), says), at));
        }
        if (part == null) {
            String says = program.part().why() + " So the permitted speed is not known." + estimate;
            return new Finding.NotCheckable(Details.of(Check.CONTACT, says), contact.rule());
        }
        if (!program.figures().speedsComplete()) {
            return new Finding.NotCheckable(
                    Details.of(Check.CONTACT, Places.missingSpeeds(program) + estimate), contact.rule());
        }
        if (!Double.isFinite(least.permittedMmS())) {
            String says = "Arm, tool and part have no mass, so the permitted speed is not known. Give the cell its"
                    + " moving mass." + estimate;
            return new Finding.NotCheckable(Details.of(Check.CONTACT, says), contact.rule());
        }
        if (program.cell().fittedTool().edges()) {
            return new Finding.NotCheckable(Places.at(edged(program, fastest, least, estimate), at), contact.rule());
        }
        String says = "The fastest part is held to " + up(fastest, 1) + " mm/s of " + down(least.permittedMmS(), 1)
                + " mm/s, permitted for " + region + "." + estimate;
        return new Finding.Within(Places.at(details(fastest, least.permittedMmS(), says), at));
    }

    /** The table's forces are spread over the flat of a blunt body: too fast for that is too fast, slow enough is nothing. */
    private static Details edged(
            CheckedProgram program, double fastest, ContactSpeeds.Permitted least, String estimate) {
        String says =
                "The fitted tool " + program.cell().fittedTool().code() + " has edges: the permitted speeds of ISO/TS"
                        + " 15066:2016 Annex A are for blunt contact and say nothing about an edge. A blunt tool would be held to "
                        + up(fastest, 1) + " mm/s of " + down(least.permittedMmS(), 1) + " mm/s, permitted for "
                        + least.region().word() + ". Cover the edges, or keep people away from the tool." + estimate;
        return details(fastest, least.permittedMmS(), says);
    }

    private static String unlisted(ContactLimit contact) {
        boolean head = contact.regions().contains(BodyRegion.SKULL_AND_FOREHEAD)
                || contact.regions().contains(BodyRegion.FACE);
        return " Regions that are not listed" + (head ? "" : ", the head among them,") + " are not looked at.";
    }

    /** Which table was used, and where the values of the deciding region come from. */
    private static String values(CheckedProgram program, ContactLimit contact, BodyRegion region) {
        String table = contact.values().containsKey(region)
                ? "the cell's own values"
                : "the table " + Words.quoted(program.contactTable().name());
        return " Used is " + table + " (" + region.word() + ": "
                + program.contactTable().source(region) + ").";
    }

    private static Details details(@Nullable Double observed, double permitted, String says) {
        return Details.of(Check.CONTACT, says)
                .comparing(observed, permitted, "mm/s")
                .from(LimitSource.CELL);
    }
}
