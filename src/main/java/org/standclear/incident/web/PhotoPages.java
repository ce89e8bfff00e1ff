package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ByteArrayResource;
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
import org.standclear.incident.photos.PhotoDarkroom;
import org.standclear.incident.photos.PhotoDarkroom.Developed;
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
    private final PhotoDarkroom darkroom;
    private final IncidentAccess access;
    private final IncidentPages pages;
    private final PostOnce once;

    PhotoPages(
            IncidentPhotos photos, PhotoDarkroom darkroom, IncidentAccess access, IncidentPages pages, PostOnce once) {
        this.photos = photos;
        this.darkroom = darkroom;
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
            Model model) {
        Incident found = access.visible(incident, me);
        String words = PlainText.mended(caption, LONGEST_CAPTION);
        Map<String, String> errors = new LinkedHashMap<>();
        if (once.actedAt(formToken).isPresent()) {
            return "redirect:/incidents/" + incident;
        }
        // before the form's transaction begins: who waits for the darkroom keeps no connection from the others
        Developed developed = developed(incident, photo);
        if (developed instanceof Developed.Photo picture) {
            Optional<String> next = once.run(formToken, () -> added(incident, picture, words, me, errors));
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
        }
        if (developed instanceof Developed.Refused refused) {
            errors.put("photo", refused.says());
        }
        HttpStatus status = HttpStatus.UNPROCESSABLE_CONTENT;
        if (developed instanceof Developed.Busy busy) {
            errors.put("photo", busy.says());
            status = HttpStatus.SERVICE_UNAVAILABLE;
            response.setHeader("Retry-After", "30");
        }
        response.setStatus(status.value());
        return pages.page(found, me, errors, model);
    }

    private Developed developed(IncidentId incident, @Nullable MultipartFile photo) {
        return photos.whyNoMore(incident)
                .<Developed>map(Developed.Refused::new)
                .orElseGet(() -> darkroom.develop(photo == null ? new ByteArrayResource(new byte[0]) : photo));
    }

    private @Nullable String added(
            IncidentId incident, Developed.Photo picture, String words, SignedInPerson me, Map<String, String> errors) {
        if (photos.add(incident, picture, words, me.id()) instanceof IncidentOutcome.Refused refused) {
            errors.put("photo", refused.says());
            return null;
        }
        return "/incidents/" + incident;
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
