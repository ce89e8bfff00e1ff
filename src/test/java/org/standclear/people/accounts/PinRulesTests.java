package org.standclear.people.accounts;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PinRulesTests {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "000000", "111111", "112211", "121212", "123123", "123456", "654321", "890123", "246802", "975319",
                "123321", "112233", "998877", "147258", "159753"
            })
    void refusesTheFirstToBeGuessed(String pin) {
        assertThat(PinRules.refuse(pin))
                .hasValueSatisfying(says -> assertThat(says).contains("guessed"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "12345", "1234567", "12a456", " 82734", "٣٤٥٦٧٨", "-28463", "82736\u0000"})
    void refusesWhatIsNotSixDigits(String pin) {
        assertThat(PinRules.refuse(pin)).hasValue("Use six digits.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"274913", "830562", "010394", "771304"})
    void takesOthers(String pin) {
        assertThat(PinRules.refuse(pin)).isEmpty();
    }
}
