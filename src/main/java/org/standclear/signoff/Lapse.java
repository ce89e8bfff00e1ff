package org.standclear.signoff;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.ReleaseId;

/**
 * That something no longer holds, from the instant it was first seen.
 *
 * @param what {@code check}, {@code session list}, {@code short list} or {@code release}
 * @param release null unless a release lapsed
 */
public record Lapse(
        BookingId booking, @Nullable ReleaseId release, String what, String code, String because, Instant at) {}
