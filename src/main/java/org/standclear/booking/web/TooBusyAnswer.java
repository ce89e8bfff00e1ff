package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.standclear.booking.web.PatientPost.TooBusyException;

/** What people are told when the database gave up on their form every time. */
@ControllerAdvice
class TooBusyAnswer {

    @ExceptionHandler(TooBusyException.class)
    String answer(HttpServletResponse response, Model model) {
        response.setStatus(HttpStatus.CONFLICT.value());
        model.addAttribute("status", HttpStatus.CONFLICT.value());
        model.addAttribute("title", "Not stored: many people at once");
        model.addAttribute(
                "says",
                "Others were changing the same things at that moment. Nothing of yours was stored; go back and send "
                        + "the form again.");
        return "error/refused";
    }
}
