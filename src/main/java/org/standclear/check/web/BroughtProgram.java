package org.standclear.check.web;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.program.ProgramUploads;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.Programs;
import org.standclear.program.Revision;

/** Finds or keeps the revision that a form brings; what is wrong goes into the errors. */
@Component
class BroughtProgram {

    private final CheckChoices choices;
    private final Programs programs;
    private final ProgramUploads uploads;

    BroughtProgram(CheckChoices choices, Programs programs, ProgramUploads uploads) {
        this.choices = choices;
        this.programs = programs;
        this.uploads = uploads;
    }

    /** The upload that the form asks for; empty when it brings nothing new or something is wrong. */
    Optional<UploadProgram> upload(ProgramForm form, SignedInPerson me, Map<String, String> errors) {
        Optional<Revision> latest = chosen(form, me, errors);
        if (!form.bringsFile() && latest.isEmpty()) {
            errors.putIfAbsent("upload", "Choose a program file, or paste the program below.");
        }
        String title = title(form, errors);
        String declaration = form.declaration(errors);
        byte[] bytes = form.bringsFile() ? form.bytes(errors) : new byte[0];
        if (!errors.isEmpty() || (!form.bringsFile() && !form.declares())) {
            return Optional.empty();
        }
        return Optional.of(new UploadProgram(
                me.id(),
                latest.map(Revision::program).orElse(null),
                title,
                form.bringsFile()
                        ? form.fileName()
                        : latest.map(Revision::fileName).orElse(""),
                form.bringsFile()
                        ? bytes
                        : latest.map(Revision::id).map(programs::bytes).orElse(bytes),
                declaration));
    }

    /** The revision to go on with: the one just kept, or the latest of the chosen program. */
    Optional<ProgramUploads.Uploaded> keep(
            Optional<UploadProgram> upload, ProgramForm form, SignedInPerson me, Map<String, String> errors) {
        if (upload.isEmpty()) {
            return chosen(form, me, errors).map(latest -> new ProgramUploads.Uploaded(latest, true));
        }
        ProgramUploads.Outcome outcome = uploads.upload(upload.get());
        if (outcome instanceof ProgramUploads.Refused refused) {
            errors.put(form.fieldOf(refused.field()), refused.says());
            return Optional.empty();
        }
        return Optional.of((ProgramUploads.Uploaded) outcome);
    }

    private Optional<Revision> chosen(ProgramForm form, SignedInPerson me, Map<String, String> errors) {
        String program = form.program();
        if (program == null || program.isBlank()) {
            return Optional.empty();
        }
        Optional<Revision> latest = choices.latest(me, program);
        if (latest.isEmpty()) {
            errors.put("program", "No such program, or it is not yours.");
        }
        return latest;
    }

    private static @Nullable String title(ProgramForm form, Map<String, String> errors) {
        if (form.programTitle() == null || form.programTitle().isBlank()) {
            return null;
        }
        PlainText.Checked checked = PlainText.check(form.programTitle(), 120);
        if (checked instanceof PlainText.Fine fine) {
            return fine.text();
        }
        errors.put("programTitle", ((PlainText.Refused) checked).says());
        return null;
    }
}
