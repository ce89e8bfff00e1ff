package org.standclear.signoff.rules;

import java.util.List;
import java.util.Objects;
import java.util.StringJoiner;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.digest.Sha256;
import org.standclear.program.Revision;
import org.standclear.signoff.Answers;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk.Statement;
import org.standclear.signoff.SignoffList;

/** Writes what a signature signs, word for word, so that its hash binds people, file, cell version and answers. */
public final class StatementText {

    private StatementText() {}

    /**
     * Names and times as they are printed in the statement.
     *
     * @param asLeft what the record says at this moment of how the cell was left
     * @param waiver empty where none stands
     */
    public record Printed(String cell, String slot, String operator, String attendant, String asLeft, String waiver) {}

    /** What a signature of that part stands for, in one sentence. */
    public static String meaning(SignoffList list, Part part) {
        if (list == SignoffList.SESSION) {
            return "We are the two on the card, authorised today; I answered for myself at the cell.";
        }
        if (list == SignoffList.HANDOVER) {
            return "I take over the e-stop: my hand is on it, I see the arm, I have nothing else to do.";
        }
        return switch (part) {
            case OPERATOR -> "I read these at the robot myself; I operate this run.";
            case ATTENDANT -> "My hand is on the e-stop, I see the arm, I have nothing else to do.";
            case RELEASER -> "I read the display myself, I looked at the people; I release this run.";
        };
    }

    /** The whole statement. */
    public static Statement of(
            Sheet sheet, Part part, Printed printed, Revision revision, StoredAnswer answer, Answers answers) {
        StringJoiner text = new StringJoiner("\n");
        text.add(capital(sheet.list().words()) + (sheet.brief() ? ", short" : "") + ", round " + sheet.round() + ": "
                + part.words());
        text.add("Cell " + printed.cell() + " version " + sheet.cellVersion() + ", slot " + printed.slot());
        text.add("Operator " + printed.operator() + "; e-stop attendant " + printed.attendant());
        text.add("Program \"" + revision.title() + "\" revision " + revision.number() + ", SHA-256 "
                + revision.sha256());
        text.add("Declaration SHA-256 " + revision.declarationSha256());
        text.add("Check " + answer.id() + ": " + answer.verdict().words() + "; tool "
                + Objects.requireNonNullElse(answer.bench().tool(), "not declared") + ", payload " + payload(answer));
        if (!printed.waiver().isEmpty()) {
            text.add(printed.waiver());
        }
        List<ListItem> items = Items.of(sheet.list(), part, sheet.brief());
        for (ListItem item : items) {
            text.add(item.number() + ". " + item.challenge() + " " + item.inWords(answers.of(item.number())));
        }
        if (sheet.list() == SignoffList.SESSION) {
            text.add(Items.AS_LEFT + ". " + Items.AS_LEFT_ASKS + " The record says: " + printed.asLeft() + ".");
        }
        text.add(meaning(sheet.list(), part));
        String whole = text.toString();
        return new Statement(whole, Sha256.of(whole));
    }

    private static String payload(StoredAnswer answer) {
        Double kg = answer.bench().payloadKg();
        return kg == null ? "not known" : Numbers.shown(kg) + " kg";
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
    }
}
