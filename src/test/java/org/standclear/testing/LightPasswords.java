package org.standclear.testing;

import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/** Hashes passwords and PINs the same way as the application, but with little memory, since tests do it often. */
@TestConfiguration(proxyBeanMethods = false)
class LightPasswords {

    private static final int KIBIBYTES = 128;

    @Bean
    @Primary
    PasswordEncoder lightPasswordEncoder() {
        return new Argon2PasswordEncoder(16, 32, 1, KIBIBYTES, 1);
    }
}
