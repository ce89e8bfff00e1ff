package org.standclear.people.roster;

/** One student in one section, as a roster has it; line is the file's. */
record RosterRow(int line, String login, String name, String address, String course, String section, String team) {

    String sectionCode() {
        return course + "-" + section;
    }
}
