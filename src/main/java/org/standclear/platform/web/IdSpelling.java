package org.standclear.platform.web;

import java.beans.PropertyEditorSupport;
import java.util.UUID;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.InitBinder;
import org.standclear.platform.ids.Id;

/**
 * Ids in addresses and forms have one spelling, by which {@code LabOfRequest} finds every one of them. An editor, since
 * what a converter refuses would be given to Spring's own lenient editor.
 */
@ControllerAdvice
class IdSpelling {

    @InitBinder
    void readIds(WebDataBinder binder) {
        binder.registerCustomEditor(UUID.class, new PropertyEditorSupport() {
            @Override
            public void setAsText(String text) {
                setValue(text.isEmpty() ? null : Id.parse(text));
            }
        });
    }
}
