package org.standclear.people.accounts;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PasswordRulesTests {

    private static boolean taken(String password) {
        return PasswordRules.refuse(password, "noor.c", "Noor Candlewick").isEmpty();
    }

    @Test
    void asksForTwelveCharactersAndNoMoreThanCanBeHashedQuickly() {
        assertThat(taken("tern-hall-7")).isFalse();
        assertThat(taken("tern-hall-70")).isTrue();
        assertThat(taken("tern hall 7 ".repeat(10) + "and more")).isTrue();
        assertThat(taken("tern hall 7 ".repeat(10) + "and more.")).isFalse();
    }

    @Test
    void refusesTheFirstToBeTried() {
        assertThat(taken("aaaaaaaaaaaaa")).isFalse();
        assertThat(taken("Password Password")).isFalse();
        assertThat(taken("123456789012")).isFalse();
    }

    @Test
    void refusesLittleMoreThanTheName() {
        assertThat(taken("noorcandlewick1")).isFalse();
        assertThat(taken("Noor Candlewick 1")).isFalse();
        assertThat(taken("the lamp of noor.c shines twice")).isTrue();
    }

    @Test
    void refusesControlCharacters() {
        assertThat(taken("tern\u0000hall\u0000seven")).isFalse();
    }

    @Test
    void readsComposedAndDecomposedLettersAlike() {
        assertThat(PasswordRules.normal("Zoe\u0308")).isEqualTo(PasswordRules.normal("Zo\u00eb"));
    }
}
