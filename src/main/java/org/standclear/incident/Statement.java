package org.standclear.incident;

import java.time.Instant;
import org.standclear.platform.ids.PersonId;

/** What somebody says about an incident in their own words, a part in it or not. Never changed. */
public record Statement(PersonId by, Instant at, String words) {}
