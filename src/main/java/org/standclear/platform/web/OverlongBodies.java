package org.standclear.platform.web;

import jakarta.servlet.ServletException;
import java.io.IOException;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;

/**
 * Hangs up on bodies that say they are longer than is read past a refusal. The container would wait for them up to that
 * limit, a minute for each piece that does not come, although it has answered already.
 */
@Component
class OverlongBodies implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

    private final long readPastARefusal;

    OverlongBodies(@Value("${server.tomcat.max-swallow-size}") DataSize readPastARefusal) {
        this.readPastARefusal = readPastARefusal.toBytes();
    }

    @Override
    public void customize(ConfigurableTomcatWebServerFactory server) {
        server.addEngineValves(new HangUp(readPastARefusal));
    }

    /** Looks when the answer is made, since the container takes the order to hang up for a failure of its own. */
    private static final class HangUp extends ValveBase {

        private final long most;

        HangUp(long most) {
            super(true);
            this.most = most;
        }

        @Override
        public void invoke(Request request, Response response) throws IOException, ServletException {
            getNext().invoke(request, response);
            if (request.getContentLengthLong() > most && response.getStatus() >= HttpStatus.BAD_REQUEST.value()) {
                request.getCoyoteRequest().action(ActionCode.DISABLE_SWALLOW_INPUT, null);
            }
        }
    }
}
