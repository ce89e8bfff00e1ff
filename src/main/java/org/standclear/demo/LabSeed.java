package org.standclear.demo;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.people.Duty;

/** The lab of the demo, its accounts, its duty plan and its authorisations. */
record LabSeed(
        String college,
        String room,
        String name,
        ZoneId zone,
        String emergencyNumber,
        String firstAider,
        String stopMap,
        String password,
        String pin,
        String passwordHash,
        String pinHash,
        List<Account> accounts,
        List<Period> duty,
        List<String> onCall,
        Authorisations authorisations) {

    /** An account that is printed at the start. */
    record Account(String login, String does) {}

    /** When somebody is on duty. */
    record Period(String who, List<WeekTimes.Day> days, LocalTime from, LocalTime until) {}

    /** How authorisations differ from the usual ones. */
    record Authorisations(List<AuthorisationException> exceptions) {

        /** What is different for the person and duty, if anything is. */
        Optional<AuthorisationException> of(String login, Duty duty) {
            return exceptions.stream()
                    .filter(one -> one.login().equals(login) && one.duty().equalsIgnoreCase(duty.name()))
                    .findFirst();
        }
    }

    /**
     * Somebody's authorisation that differs.
     *
     * @param daysLeft from the start of the demo; below zero it has ended; null when there is none
     */
    record AuthorisationException(
            String login, String duty, @Nullable Integer daysLeft) {}
}
