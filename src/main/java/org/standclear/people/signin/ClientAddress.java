package org.standclear.people.signin;

import java.util.Arrays;
import java.util.HexFormat;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.WebAuthenticationDetails;

/** The part of a client's address that tries are counted for. */
public final class ClientAddress {

    private ClientAddress() {}

    /** An IPv4 address as it is; of an IPv6 address the first 64 bits, since one client has all the others. */
    public static String of(String remote) {
        if (!remote.contains(":")) {
            return remote;
        }
        try {
            byte[] bytes = java.net.InetAddress.getByName(remote.replaceFirst("%.*", ""))
                    .getAddress();
            return bytes.length == 4 ? remote : HexFormat.ofDelimiter(":").formatHex(Arrays.copyOf(bytes, 8)) + "/64";
        } catch (java.net.UnknownHostException notAnAddress) {
            return remote;
        }
    }

    static String of(Authentication asked) {
        return asked.getDetails() instanceof WebAuthenticationDetails details
                ? of(String.valueOf(details.getRemoteAddress()))
                : "unknown";
    }
}
