package org.standclear.message;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.people.Invitations;
import org.standclear.platform.ids.PersonId;

/** Tells somebody that another lab asks them into a course. */
@Component
class InvitationLetters implements Invitations.Letters {

    private final Messages messages;

    InvitationLetters(Messages messages) {
        this.messages = messages;
    }

    @Override
    public void asked(PersonId person, String lab, String course) {
        messages.tell(Message.of(
                person,
                "course-invitation",
                "You are asked into a course of " + lab,
                List.of(
                        course + ".",
                        "If you say yes you are a student there too, and its staff see your name. Until then they see"
                                + " nothing of you."),
                "/me/invitations"));
    }
}
