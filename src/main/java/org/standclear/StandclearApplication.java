package org.standclear;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.PrintWriter;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.standclear.commandline.Commands;
import org.standclear.platform.start.ClassesAhead;

/** Starts the web application, or runs the command that was asked for. */
@SpringBootApplication
public class StandclearApplication {

    /** Runs the command that the arguments name; without one, starts the web server with them as its settings. */
    public static void main(String[] args) {
        if (Commands.areMeantBy(args)) {
            System.exit(Commands.run(
                    new PrintWriter(System.out, true, UTF_8), new PrintWriter(System.err, true, UTF_8), args));
        }
        ClassesAhead.begin();
        SpringApplication.run(StandclearApplication.class, args);
    }
}
