package org.standclear.testing.browser;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * Marks a test class whose methods take {@link Browser} parameters, one for each person in the story: each is a Chromium
 * with cookies of its own. Combine it with the annotation of an engine. Where Chromium is not installed the class is
 * skipped with that reason, but fails when the environment says {@code CI=true}.
 */
@Documented
@Inherited
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Tag("browser")
@ExtendWith(BrowserExtension.class)
public @interface BrowserTest {}
