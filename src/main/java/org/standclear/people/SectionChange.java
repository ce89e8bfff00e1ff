package org.standclear.people;

import java.util.List;

/**
 * What one file, or taking it back, changed for somebody in one course. Sections are named by their code with the course's.
 *
 * @param left where the person is not any more
 * @param came where the person is by the same act
 * @param stays where the person was before and is still
 */
public record SectionChange(List<String> left, List<String> came, List<String> stays) {

    public SectionChange {
        left = List.copyOf(left);
        came = List.copyOf(came);
        stays = List.copyOf(stays);
    }
}
