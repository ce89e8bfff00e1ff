package org.standclear.signoff.rules;

import static org.standclear.signoff.ItemField.Choice.goesOn;

import java.util.List;
import org.standclear.signoff.ItemField;
import org.standclear.signoff.ItemField.Choice;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffList;

/** The items of both lists, as they are printed on the card; each asks for a value or an act, none for a tick. */
public final class Items {

    /** Number of the item on the session list that names the other person. */
    public static final int OTHER_PERSON = 1;

    /** Number of the item on the session list that reads the fitted tool. */
    public static final int AS_BOOKED = 4;

    /** Number of the item on the session list that nobody answers, because the record does. */
    public static final int AS_LEFT = 5;

    /** Its challenge. */
    public static final String AS_LEFT_ASKS = "Last user closed out, nothing tagged?";

    /** Numbers of the items of the bench list. */
    public static final int PROGRAM = 1;

    public static final int POWER = 2;
    public static final int SENSITIVITY = 3;
    public static final int TOOL = 4;
    public static final int FIXTURE = 5;
    public static final int END = 6;
    public static final int E_STOP = 7;
    public static final int PEOPLE = 8;

    private static final List<ListItem> SESSION = List.of(
            new ListItem(
                    OTHER_PERSON,
                    "Who is with you?",
                    "The other person on the card, authorised today.",
                    List.of(ItemField.text("other", "First name"))),
            new ListItem(
                    2,
                    "Hair, sleeves, jewellery, shoes, eyes?",
                    "",
                    List.of(ItemField.choice(
                            "clothing",
                            "You, from head to foot",
                            goesOn("in-order", "in order"),
                            new Choice("not-yet", "not yet", "Put it in order first, then answer.")))),
            new ListItem(
                    3,
                    "Inside the line?",
                    "Look at the table, the floor and the arm.",
                    List.of(ItemField.choice(
                            "line",
                            "Inside the line",
                            goesOn("nothing-loose", "nothing loose"),
                            new Choice("loose", "something is loose", "Take it out first, then answer.")))),
            new ListItem(
                    AS_BOOKED,
                    "Tool, fixture and parts as booked?",
                    "Read the code on the tool.",
                    List.of(
                            ItemField.text("tool", "Tool code"),
                            ItemField.choice(
                                    "fixture",
                                    "Fixture and parts",
                                    goesOn("as-booked", "as booked"),
                                    new Choice(
                                            "different",
                                            "different",
                                            "Ask a technician: another tool or fixture is another cell version.")))));

    private static final ListItem LOADED = new ListItem(
            PROGRAM,
            "Which program is loaded?",
            "The last 4 characters of its fingerprint.",
            List.of(ItemField.text("fingerprint", "Last 4 characters")));

    private static final ListItem DISPLAY = new ListItem(
            POWER,
            "Power mode and override on the display?",
            "",
            List.of(
                    ItemField.choice("power", "Power mode", goesOn("reduced", "reduced"), goesOn("full", "full")),
                    ItemField.number("override", "Override", "%")));

    private static final List<ListItem> OPERATOR = List.of(
            LOADED,
            DISPLAY,
            new ListItem(
                    SENSITIVITY,
                    "Collision sensitivity?",
                    "Read the level on the display.",
                    List.of(ItemField.text("sensitivity", "Level"))),
            new ListItem(
                    TOOL,
                    "Tool and part?",
                    "Read the code. Pull at the tool.",
                    List.of(
                            ItemField.text("tool", "Tool code"),
                            ItemField.choice(
                                    "pull",
                                    "After a pull",
                                    goesOn("tight", "tight"),
                                    new Choice("loose", "loose", "Have it fitted tight first, then answer.")))),
            new ListItem(
                    FIXTURE,
                    "Fixture and parts?",
                    "",
                    List.of(ItemField.choice(
                            "fixture",
                            "Fixture and parts",
                            goesOn("clamped", "clamped, nothing loose"),
                            new Choice("loose", "something is loose", "Clamp it or take it out first, then answer.")))),
            new ListItem(
                    END,
                    "How does it end?",
                    "",
                    List.of(
                            ItemField.choice(
                                    "ends",
                                    "At the end",
                                    goesOn("passes", "it ends by itself"),
                                    goesOn("forever", "it loops until I stop it")),
                            ItemField.number("passes", "After how many passes", ""))));

    private static final List<ListItem> ATTENDANT = List.of(new ListItem(
            E_STOP,
            "E-stop?",
            "",
            List.of(ItemField.choice(
                    "hand",
                    "Your one duty",
                    goesOn("on-it", "Hand on it, I see the arm, nothing else to do"),
                    new Choice("not-yet", "not yet", "Take your place at the e-stop first, then answer.")))));

    /** Who comes to the e-stop in the middle of a slot has not signed the session list: two of its items, then the hand. */
    private static final List<ListItem> HANDOVER = List.of(SESSION.get(0), SESSION.get(1), ATTENDANT.get(0));

    private static final List<ListItem> RELEASER = List.of(
            DISPLAY,
            new ListItem(
                    PEOPLE,
                    "People?",
                    "Look, then answer.",
                    List.of(ItemField.choice(
                            "people",
                            "People at the cell",
                            goesOn("clear", "hands clear, everyone behind the stand line"),
                            new Choice(
                                    "not-clear",
                                    "somebody is in front of it",
                                    "Ask them behind the stand line first, then answer.")))));

    private Items() {}

    /**
     * What a part answers on a list.
     *
     * @param brief the short list for an unchanged repeat in the same slot: items 1, 2, 7, 8, 9
     */
    public static List<ListItem> of(SignoffList list, Part part, boolean brief) {
        if (list == SignoffList.SESSION) {
            return part == Part.RELEASER ? List.of() : SESSION;
        }
        if (list == SignoffList.HANDOVER) {
            return part == Part.ATTENDANT ? HANDOVER : List.of();
        }
        return switch (part) {
            case OPERATOR -> brief ? List.of(LOADED, DISPLAY) : OPERATOR;
            case ATTENDANT -> ATTENDANT;
            case RELEASER -> RELEASER;
        };
    }
}
