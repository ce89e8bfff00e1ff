package org.standclear.cell;

import java.util.Locale;
import java.util.Optional;

/** What comes round on a cell and gates its releases when it is late. */
public enum RecurringDuty {
    INSPECTION("inspection", "A competent person inspects it"),
    RISK_ASSESSMENT("risk-assessment review", "The safety reviewer reviews it with the instructor");

    private final String words;
    private final String mend;

    RecurringDuty(String words, String mend) {
        this.words = words;
        this.mend = mend;
    }

    /** The duty as people say it. */
    public String words() {
        return words;
    }

    /** Who does it. */
    public String mend() {
        return mend;
    }

    /** The duty as forms and addresses send it: {@code inspection}, {@code risk-assessment}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<RecurringDuty> of(String code) {
        for (RecurringDuty duty : values()) {
            if (duty.code().equals(code)) {
                return Optional.of(duty);
            }
        }
        return Optional.empty();
    }
}
