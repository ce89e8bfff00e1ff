package org.standclear.platform.security;

import java.util.List;

/** A feature's routes and who may use them; each feature's web package has one as a bean. */
public interface RouteRules {

    /** The rules; within one feature the first match counts. */
    List<RouteRule> rules();
}
