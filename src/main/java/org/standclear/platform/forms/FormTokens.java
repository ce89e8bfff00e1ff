package org.standclear.platform.forms;

import java.util.UUID;
import org.springframework.stereotype.Component;

/** Hands out a fresh token for each form on a page; templates reach it as {@code @formTokens}. */
@Component("formTokens")
public class FormTokens {

    /** A token that no form has had before. */
    public String next() {
        return UUID.randomUUID().toString();
    }
}
