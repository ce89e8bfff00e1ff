package org.standclear.retention;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.test.context.TestPropertySource;

/** Gives tests that move the clock by decades an application and a database of their own, apart from those of others. */
@TestPropertySource(properties = "spring.application.name=standclear-keeping")
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@interface Keeping {}
