package org.standclear.check.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import org.standclear.check.UnstoredChecks;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.ProblemException;

/** The check for programs of a person's own: a file in, the answer out, nothing kept. */
@RestController
class CheckCalls {

    private final CellsByName cells;
    private final UnstoredChecks checks;

    CheckCalls(CellsByName cells, UnstoredChecks checks) {
        this.cells = cells;
        this.checks = checks;
    }

    /** A cell, and the course's limits beside its own. */
    private record Place(CellDescription cell, CourseLimits course) {}

    @PostMapping("/api/checks")
    ResponseEntity<String> check(
            HttpServletRequest request,
            @RequestParam(name = "program", required = false) @Nullable MultipartFile program,
            @RequestParam(name = "declaration", required = false) @Nullable MultipartFile declaration,
            @RequestParam(name = "phrasebook", required = false) @Nullable MultipartFile phrasebook,
            @RequestParam(name = "cell-file", required = false) @Nullable MultipartFile cellFile,
            @RequestParam(name = "cell", required = false) @Nullable String cell,
            @RequestParam(name = "lab", required = false) @Nullable String lab,
            @AuthenticationPrincipal SignedInPerson me) {
        String type = String.valueOf(request.getContentType()).toLowerCase(Locale.ROOT);
        if (!type.startsWith(MediaType.MULTIPART_FORM_DATA_VALUE)) {
            throw new ProblemException(
                    HttpStatus.UNSUPPORTED_MEDIA_TYPE,
                    "Send multipart/form-data with the file \"program\" and either \"cell\" or the file \"cell-file\".");
        }
        if (program == null) {
            throw new ProblemException(HttpStatus.BAD_REQUEST, "The file \"program\" is missing.");
        }
        if ((cell == null || cell.isBlank()) == (cellFile == null)) {
            throw new ProblemException(
                    HttpStatus.BAD_REQUEST, "Name one cell: its name in \"cell\", or the file \"cell-file\".");
        }
        Place place = cellFile != null
                ? new Place(read("cell-file", cellFile, CellFileReader::read), CourseLimits.NONE)
                : new Place(cells.find(me, String.valueOf(cell).strip(), lab), CourseLimits.USUAL);
        Declaration declared = declaration == null ? null : read("declaration", declaration, DeclarationReader::read);
        Phrasebook book = phrasebook == null ? null : read("phrasebook", phrasebook, Phrasebook::read);
        byte[] bytes = bytes("program", program, InputText.PROGRAM_BYTES);
        UnstoredChecks.Outcome outcome =
                checks.check(new UnstoredChecks.Question(place.cell(), place.course(), bytes, declared, book));
        if (outcome instanceof UnstoredChecks.Outcome.Answered answered) {
            return ResponseEntity.ok().contentType(MediaType.APPLICATION_JSON).body(answered.json());
        }
        throw outcome instanceof UnstoredChecks.Outcome.Unreadable unreadable
                ? unreadable("program", unreadable.why())
                : new ProblemException(
                        HttpStatus.SERVICE_UNAVAILABLE, "Several large programs are being checked just now.");
    }

    private static <T> T read(String part, MultipartFile file, Function<String, Reading<T>> reader) {
        Reading<T> reading =
                InputText.ofOther(bytes(part, file, InputText.OTHER_BYTES)).then(reader);
        if (reading instanceof Reading.Refused<T> refused) {
            throw unreadable(part, refused.why());
        }
        return reading.value();
    }

    private static byte[] bytes(String part, MultipartFile file, int most) {
        if (file.getSize() > most) {
            throw new ProblemException(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "The file \"" + part + "\" may have " + most / (1024 * 1024) + " MiB at most.",
                    Map.of("part", part));
        }
        try {
            return file.getBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ProblemException unreadable(String part, BadInput why) {
        Map<String, Object> more = why.line() > 0 ? Map.of("part", part, "line", why.line()) : Map.of("part", part);
        return new ProblemException(
                HttpStatus.UNPROCESSABLE_CONTENT, "The file \"" + part + "\", " + why.sentence() + ".", more);
    }

    /** What can be called, described for programs that make callers. */
    @GetMapping("/api/openapi.yaml")
    ResponseEntity<String> description() throws IOException {
        try (InputStream in = new ClassPathResource("openapi/checks.yaml").getInputStream()) {
            return ResponseEntity.ok()
                    .contentType(MediaType.APPLICATION_YAML)
                    .body(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }
}
