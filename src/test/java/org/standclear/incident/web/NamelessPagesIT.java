package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A report without a name leaves nothing that leads from its sender to it, and still may be sent twice. */
class NamelessPagesIT {

    abstract static class Cases extends IncidentPageCases {

        private Map<String, String> fields(String receipt, String token) {
            Map<String, String> fields = new HashMap<>();
            fields.put("cell", scene().cell.toString());
            fields.put("kind", "near-miss");
            fields.put("sentence", "A hand was in the cell while it waited.");
            fields.put("signed", "no");
            fields.put("receipt", receipt);
            fields.put("formToken", token);
            return fields;
        }

        private MockHttpServletResponse sends(Person who, Map<String, String> fields) throws Exception {
            var request = post("/incidents/near-miss");
            fields.forEach(request::param);
            return send(who, request);
        }

        private String stored(String token) {
            return jdbc.sql("select location from form_tokens where token = :token")
                    .param("token", UUID.fromString(token))
                    .query(String.class)
                    .single();
        }

        @Test
        void keepsNoReceiptWithTheFormsToken() throws Exception {
            for (Person who : new Person[] {scene().noor, scene().screen}) {
                String carried = see(who, "/incidents/near-miss")
                        .select("input[name=receipt]")
                        .val();
                String token = UUID.randomUUID().toString();

                String first = led(sends(who, fields(carried, token)));
                String second = led(sends(who, fields(carried, token)));

                assertThat(first).as("the receipt that the form carried").isEqualTo("/incidents/receipts/" + carried);
                assertThat(second).as("sent twice, its sender still gets it").isEqualTo(first);
                assertThat(stored(token)).isEqualTo("/incidents/receipts");
                assertThat(incidents.byReceipt(carried)).isPresent();
            }
        }

        @Test
        void givesNoReceiptTwiceAndNoneThatIsNone() throws Exception {
            String carried = reports.newReceipt();
            String first =
                    led(sends(scene().noor, fields(carried, UUID.randomUUID().toString())));
            for (String odd : new String[] {carried, "", "AAAA", "<script>", "0000-0000-0000", carried + "A"}) {
                String token = UUID.randomUUID().toString();
                assertThat(led(sends(scene().mateo, fields(odd, token))))
                        .as(odd)
                        .matches("/incidents/receipts/[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}")
                        .isNotEqualTo(first)
                        .isNotEqualTo("/incidents/receipts/" + odd);
                assertThat(stored(token)).isEqualTo("/incidents/receipts");
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
