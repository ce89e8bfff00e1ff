package org.standclear.program.web;

import java.nio.charset.StandardCharsets;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.GoneException;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.Programs;
import org.standclear.program.Revision;

/** Gives a program's bytes back as they came, always as a text file to save. */
@Controller
class ProgramFiles {

    private final Programs programs;
    private final LabTime labTime;

    ProgramFiles(Programs programs, LabTime labTime) {
        this.programs = programs;
        this.labTime = labTime;
    }

    @GetMapping("/revisions/{revision}/file")
    ResponseEntity<byte[]> file(@PathVariable RevisionId revision, @AuthenticationPrincipal SignedInPerson me) {
        Revision found = programs.findFor(me.id(), revision).orElseThrow(() -> new NotFoundException("program"));
        programs.takenOutAt(revision).ifPresent(at -> {
            throw new GoneException("The text of this revision was taken out on " + labTime.date(at)
                    + ", at the end of its time. Its SHA-256 is still known: " + found.sha256() + ".");
        });
        ContentDisposition save = ContentDisposition.attachment()
                .filename(found.fileName(), StandardCharsets.UTF_8)
                .build();
        return ResponseEntity.ok()
                .contentType(new MediaType(MediaType.TEXT_PLAIN, StandardCharsets.UTF_8))
                .header(HttpHeaders.CONTENT_DISPOSITION, save.toString())
                .header("X-Content-Type-Options", "nosniff")
                .body(programs.bytes(revision));
    }
}
