package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentPhotos;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.web.NotFoundException;

/** Takes photos in and shows them. What the browser says about a file, its name and its kind, is not looked at. */
@Controller
class PhotoPages {

    private static final int LONGEST_CAPTION = 200;

    private final IncidentPhotos photos;
    private final IncidentAccess access;
    private final IncidentPages pages;
    private final PostOnce once;

    PhotoPages(IncidentPhotos photos, IncidentAccess access, IncidentPages pages, PostOnce once) {
        this.photos = photos;
        this.access = access;
        this.pages = pages;
        this.once = once;
    }

    @PostMapping("/incidents/{incident}/photos")
    String add(
            @PathVariable IncidentId incident,
            @RequestParam(required = false) @Nullable MultipartFile photo,
            @RequestParam(defaultValue = "") String caption,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model)
            throws IOException {
        Incident found = access.visible(incident, me);
        byte[] file = photo == null ? new byte[0] : photo.getBytes();
        String words = PlainText.mended(caption, LONGEST_CAPTION);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> next = once.run(formToken, () -> {
            if (photos.add(incident, file, words, me.id()) instanceof IncidentOutcome.Refused refused) {
                errors.put("photo", refused.says());
                return null;
            }
            return "/incidents/" + incident;
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return pages.page(found, me, errors, model);
    }

    @GetMapping("/incidents/{incident}/photos/{photo}")
    ResponseEntity<byte[]> show(
            @PathVariable IncidentId incident, @PathVariable UUID photo, @AuthenticationPrincipal SignedInPerson me) {
        Incident found = access.visible(incident, me);
        boolean mine = IncidentAccess.seesAll(me)
                || photos.of(found.id()).stream()
                        .anyMatch(one -> one.id().equals(photo) && one.addedBy().equals(me.id()));
        byte[] jpeg = mine ? photos.jpeg(incident, photo).orElse(null) : null;
        if (jpeg == null) {
            throw new NotFoundException("photo");
        }
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                .header("Content-Disposition", "inline; filename=\"photo.jpg\"")
                .body(jpeg);
    }
}
