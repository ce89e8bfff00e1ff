package org.standclear.run.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.standclear.people.ScreenPlaces;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/**
 * Keeps a bench screen that stands at a cell to that cell's bench, in front of every page and act there; a stop or a hold is
 * logged from anywhere.
 */
@Component
class OwnBench implements HandlerInterceptor, WebMvcConfigurer {

    private final ScreenPlaces screens;

    OwnBench(ScreenPlaces screens) {
        this.screens = screens;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this)
                .addPathPatterns("/bench/*", "/bench/*/*")
                .excludePathPatterns("/bench/*/stop", "/bench/*/holds");
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        Authentication signedIn = SecurityContextHolder.getContext().getAuthentication();
        if (signedIn != null
                && signedIn.getPrincipal() instanceof SignedInPerson me
                && request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> path
                && of(me).filter(own -> !own.toString().equals(path.get("cell")))
                        .isPresent()) {
            throw new NotFoundException("bench");
        }
        return true;
    }

    /** The cell at which the account's screen stands; empty when it stands at any, or is a person's own device. */
    Optional<CellId> of(SignedInPerson me) {
        return me.is(Role.BENCH) ? screens.cellOf(me.id()) : Optional.empty();
    }
}
