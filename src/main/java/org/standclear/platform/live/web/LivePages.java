package org.standclear.platform.live.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.standclear.platform.live.LiveStreams;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;
import org.standclear.platform.security.SignedInPerson;

/** The stream of what changed, as server-sent events (WHATWG HTML, 9.2), for whoever is signed in. */
@Controller
class LivePages implements RouteRules {

    private final LiveStreams streams;

    LivePages(LiveStreams streams) {
        this.streams = streams;
    }

    @Override
    public List<RouteRule> rules() {
        return List.of(RouteRule.signedIn(HttpMethod.GET, "/live"));
    }

    @GetMapping("/live")
    ResponseEntity<SseEmitter> live(@AuthenticationPrincipal SignedInPerson me) {
        return streams.open(me.id())
                .map(stream -> ResponseEntity.ok()
                        .contentType(MediaType.TEXT_EVENT_STREAM)
                        // a proxy must not gather what is meant for now
                        .header("X-Accel-Buffering", "no")
                        .body(stream))
                .orElseGet(() -> ResponseEntity.status(HttpStatus.SERVICE_UNAVAILABLE)
                        .header("Retry-After", "30")
                        .build());
    }
}
