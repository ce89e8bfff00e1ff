package org.standclear.platform.web;

import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestController;

/** Turns what goes wrong in calls by programs into problem details; pages have {@link ErrorPages}. */
@ControllerAdvice(annotations = RestController.class)
@Order(Ordered.HIGHEST_PRECEDENCE)
class ProgramErrors {

    private static final Logger LOG = LoggerFactory.getLogger(ProgramErrors.class);

    @ExceptionHandler(ProblemException.class)
    ResponseEntity<String> known(ProblemException problem) {
        ResponseEntity.BodyBuilder answer =
                ResponseEntity.status(problem.status()).contentType(MediaType.parseMediaType(Problems.MEDIA_TYPE));
        if (problem.status() == HttpStatus.TOO_MANY_REQUESTS || problem.status() == HttpStatus.SERVICE_UNAVAILABLE) {
            answer.header("Retry-After", "30");
        }
        return answer.body(Problems.text(problem.status(), problem.detail(), problem.more()));
    }

    @ExceptionHandler(Exception.class)
    ResponseEntity<String> unknown(Exception fault) {
        LOG.error("A call failed", fault);
        return ResponseEntity.internalServerError()
                .contentType(MediaType.parseMediaType(Problems.MEDIA_TYPE))
                .body(Problems.text(
                        HttpStatus.INTERNAL_SERVER_ERROR, "Something broke here. Nothing was stored.", Map.of()));
    }
}
