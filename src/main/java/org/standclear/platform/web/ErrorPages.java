package org.standclear.platform.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashSet;
import java.util.Set;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.ui.Model;
import org.springframework.validation.BindException;
import org.springframework.web.HttpMediaTypeException;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.HttpMediaTypeNotSupportedException;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.ServletRequestBindingException;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.multipart.support.MissingServletRequestPartException;
import org.standclear.platform.forms.InvalidFormTokenException;

/** Turns what features throw into pages that say what happened and what to do, before the framework answers for programs. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
class ErrorPages {

    @ExceptionHandler(NotFoundException.class)
    String notFound(NotFoundException error, HttpServletResponse response, Model model) {
        return page(HttpStatus.NOT_FOUND, "Not found", String.valueOf(error.getMessage()), response, model);
    }

    @ExceptionHandler(GoneException.class)
    String gone(GoneException error, HttpServletResponse response, Model model) {
        return page(HttpStatus.GONE, "No longer kept", String.valueOf(error.getMessage()), response, model);
    }

    @ExceptionHandler(MethodArgumentTypeMismatchException.class)
    String notAnId(MethodArgumentTypeMismatchException error, HttpServletResponse response, Model model) {
        if (error.getParameter().hasParameterAnnotation(org.springframework.web.bind.annotation.PathVariable.class)) {
            return page(HttpStatus.NOT_FOUND, "Not found", "No such page, or it is not yours.", response, model);
        }
        return page(
                HttpStatus.BAD_REQUEST,
                "That value cannot be read",
                "The value of \"" + error.getName() + "\" is not of the form that is needed.",
                response,
                model);
    }

    @ExceptionHandler(MissingServletRequestParameterException.class)
    String missing(MissingServletRequestParameterException error, HttpServletResponse response, Model model) {
        return page(
                HttpStatus.BAD_REQUEST,
                "Something is missing",
                "The form came without \"" + error.getParameterName() + "\".",
                response,
                model);
    }

    @ExceptionHandler(HttpRequestMethodNotSupportedException.class)
    String otherMethod(HttpRequestMethodNotSupportedException error, HttpServletResponse response, Model model) {
        response.setHeader("Allow", String.join(", ", allowed(error)));
        return page(
                HttpStatus.METHOD_NOT_ALLOWED,
                "Not in this way",
                "This address is there, but not for " + error.getMethod()
                        + ": open it as a page, or send it from the form it belongs to.",
                response,
                model);
    }

    private static String[] allowed(HttpRequestMethodNotSupportedException error) {
        String[] methods = error.getSupportedMethods();
        return methods == null ? new String[0] : methods;
    }

    @ExceptionHandler({HttpMediaTypeNotSupportedException.class, HttpMediaTypeNotAcceptableException.class})
    String otherMediaType(HttpMediaTypeException error, HttpServletResponse response, Model model) {
        HttpStatus status = error instanceof HttpMediaTypeNotAcceptableException
                ? HttpStatus.NOT_ACCEPTABLE
                : HttpStatus.UNSUPPORTED_MEDIA_TYPE;
        return page(
                status,
                "Not in this form",
                "The form was sent, or the page was asked for, in a form that is not read here.",
                response,
                model);
    }

    @ExceptionHandler({
        MissingServletRequestPartException.class,
        MultipartException.class,
        ServletRequestBindingException.class,
        HttpMessageNotReadableException.class,
        HandlerMethodValidationException.class,
        BindException.class
    })
    String unreadable(HttpServletResponse response, Model model) {
        return page(
                HttpStatus.BAD_REQUEST,
                "That cannot be read",
                "The form came incomplete, or a value in it is not of the form that is needed. Nothing was stored.",
                response,
                model);
    }

    @ExceptionHandler(InvalidFormTokenException.class)
    String withoutToken(InvalidFormTokenException error, HttpServletResponse response, Model model) {
        return page(HttpStatus.BAD_REQUEST, "Form not taken", String.valueOf(error.getMessage()), response, model);
    }

    @ExceptionHandler(MaxUploadSizeExceededException.class)
    String tooLarge(HttpServletResponse response, Model model) {
        return page(
                HttpStatus.CONTENT_TOO_LARGE,
                "File too large",
                "A file may have 8 MiB at most, a program or a photo. Nothing was stored.",
                response,
                model);
    }

    @ExceptionHandler(StaleFormException.class)
    String stale(StaleFormException error, HttpServletResponse response, Model model) {
        response.setStatus(HttpStatus.CONFLICT.value());
        Set<String> fields = new LinkedHashSet<>(error.yours().keySet());
        fields.addAll(error.current().keySet());
        model.addAttribute("says", error.getMessage());
        model.addAttribute("back", error.back());
        model.addAttribute("fields", fields);
        model.addAttribute("yours", error.yours());
        model.addAttribute("current", error.current());
        return "error/conflict";
    }

    private static String page(
            HttpStatus status, String title, String says, HttpServletResponse response, Model model) {
        response.setStatus(status.value());
        model.addAttribute("status", status.value());
        model.addAttribute("title", title);
        model.addAttribute("says", says);
        return "error/refused";
    }
}
