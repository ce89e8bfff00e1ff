package org.standclear;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the web application. */
@SpringBootApplication
public class StandclearApplication {

    /** Starts the web server with the given Spring Boot arguments. */
    public static void main(String[] args) {
        SpringApplication.run(StandclearApplication.class, args);
    }
}
