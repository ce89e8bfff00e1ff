package org.standclear.routes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import jakarta.servlet.ServletException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.webmvc.autoconfigure.error.BasicErrorController;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.routes.RouteMatrix.Route;
import org.standclear.routes.RouteMatrix.Row;
import org.standclear.testing.OnH2;

/** Every handler of the application stands in the matrix, and each role is let in or refused as the matrix says. */
@OnH2
class RouteMatrixIT {

    private static final int FEWEST = 20;

    @Autowired
    MockMvc mvc;

    @Autowired
    PeopleRegister register;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    private final Map<Role, SignedInPerson> people = new EnumMap<>(Role.class);

    @BeforeEach
    void signUp() {
        for (Role role : Role.values()) {
            Outcome added = register.add(new NewPerson(
                    "m" + UUID.randomUUID(),
                    "Matrix " + role.words(),
                    Set.of(role),
                    new Password.Hashed("none"),
                    null));
            Person person = ((Outcome.Done) added).person();
            people.put(
                    role, new SignedInPerson(person.id(), person.login(), person.printedName(), person.roles(), null));
        }
    }

    private Set<Route> mapped() {
        Set<Route> routes = new LinkedHashSet<>();
        mapping.getHandlerMethods().forEach((info, handler) -> {
            if (BasicErrorController.class.isAssignableFrom(handler.getBeanType())) {
                return;
            }
            assertThat(info.getMethodsCondition().getMethods())
                    .as("methods of %s: a handler without one would answer to all", handler)
                    .isNotEmpty();
            for (RequestMethod method : info.getMethodsCondition().getMethods()) {
                info.getPatternValues().forEach(pattern -> routes.add(new Route(method.asHttpMethod(), pattern)));
            }
        });
        return routes;
    }

    @Test
    void namesEveryHandlerAndNoOther() {
        Set<Route> named = RouteMatrix.read().rows().stream().map(Row::route).collect(Collectors.toSet());

        assertThat(mapped()).hasSizeGreaterThan(FEWEST);
        assertThat(named).as("routes in %s", RouteMatrix.FILE).containsExactlyInAnyOrderElementsOf(mapped());
    }

    @Test
    void letsEachRoleInOrRefusesIt() throws Exception {
        List<String> faults = new ArrayList<>();
        for (Row row : RouteMatrix.read().rows()) {
            for (Map.Entry<Optional<Role>, Boolean> cell : row.allowed().entrySet()) {
                MockHttpServletResponse answer = ask(row.route(), cell.getKey());
                String who = cell.getKey().map(Role::words).orElse("nobody");
                // programs are not sent to a page: without a token they read 401
                boolean known = cell.getKey().isPresent() || isForPrograms(row.route());
                fault(answer, known, cell.getValue())
                        .ifPresent(fault -> faults.add(row.route() + " as " + who + ": " + fault));
            }
        }
        assertThat(faults).isEmpty();
    }

    private static Optional<String> fault(MockHttpServletResponse answer, boolean signedIn, boolean allowed) {
        int status = answer.getStatus();
        String to = String.valueOf(answer.getRedirectedUrl());
        boolean toSignIn = status / 100 == 3 && to.matches("(?:http://localhost)?/sign-in(?:\\?(?:to|ended|lost).*)?");
        boolean refused = status == 401 || status == 403 || status == 405 || (toSignIn && !signedIn);
        boolean refusedAsItShould = signedIn ? status == 403 || status == 401 : toSignIn;
        if (status >= 500) {
            return Optional.of("broke with " + status + " " + answer.getErrorMessage());
        }
        if (allowed ? refused : !refusedAsItShould) {
            return Optional.of("answered " + status + " " + to + ", should be " + (allowed ? "let in" : "refused"));
        }
        return Optional.empty();
    }

    private static boolean isForPrograms(Route route) {
        return route.pattern().startsWith("/api/");
    }

    private MockHttpServletResponse ask(Route route, Optional<Role> role) throws Exception {
        MockHttpServletRequestBuilder request = filled(route).with(csrf());
        role.ifPresent(known -> request.with(user(signedIn(known))));
        return perform(request);
    }

    private SignedInPerson signedIn(Role role) {
        return java.util.Objects.requireNonNull(people.get(role));
    }

    /** The route with ids that nobody has: a page that is not found was let in. */
    private static MockHttpServletRequestBuilder filled(Route route) {
        String path = route.pattern().replaceAll("\\{[^}]+}", UUID.randomUUID().toString());
        return request(route.method(), path)
                .param("formToken", UUID.randomUUID().toString());
    }

    private MockHttpServletResponse perform(MockHttpServletRequestBuilder request) throws Exception {
        try {
            return mvc.perform(request).andReturn().getResponse();
        } catch (ServletException broken) {
            // what a container would answer
            MockHttpServletResponse answer = new MockHttpServletResponse();
            answer.sendError(500, String.valueOf(broken.getMessage()));
            return answer;
        }
    }

    @Test
    void refusesEveryFormWithoutItsCsrfToken() throws Exception {
        for (Row row : RouteMatrix.read().rows()) {
            if (row.route().method().equals(HttpMethod.GET) || isForPrograms(row.route())) {
                continue;
            }
            for (Role role : Role.values()) {
                MockHttpServletResponse answer = perform(filled(row.route()).with(user(signedIn(role))));
                assertThat(answer.getStatus()).as("%s as %s", row.route(), role).isEqualTo(403);
            }
            assertThat(perform(filled(row.route())).getRedirectedUrl())
                    .as("%s as nobody", row.route())
                    .isEqualTo("/sign-in?lost");
        }
    }

    @Test
    void refusesWhatNoRuleNames() throws Exception {
        for (Role role : Role.values()) {
            for (HttpMethod method : List.of(HttpMethod.GET, HttpMethod.POST, HttpMethod.DELETE)) {
                MockHttpServletResponse answer =
                        perform(request(method, "/no/such/page").with(csrf()).with(user(signedIn(role))));
                assertThat(answer.getStatus()).as("%s as %s", method, role).isEqualTo(404);
            }
            MockHttpServletResponse answer =
                    perform(request(HttpMethod.DELETE, "/people").with(csrf()).with(user(signedIn(role))));
            assertThat(answer.getStatus()).as("DELETE /people as %s", role).isEqualTo(405);
            assertThat(answer.getHeader("Allow")).isEqualTo("GET, HEAD, POST");
        }
        assertThat(perform(request(HttpMethod.GET, "/no/such/page")).getRedirectedUrl())
                .isEqualTo("/sign-in?to=%2Fno%2Fsuch%2Fpage");
    }

    @Test
    void catchesAWrongCell() {
        MockHttpServletResponse letIn = new MockHttpServletResponse();
        MockHttpServletResponse refused = new MockHttpServletResponse();
        refused.setStatus(403);

        assertThat(fault(letIn, true, true)).isEmpty();
        assertThat(fault(letIn, true, false)).isPresent();
        assertThat(fault(letIn, false, false)).isPresent();
        assertThat(fault(refused, true, false)).isEmpty();
        assertThat(fault(refused, true, true)).isPresent();
    }
}
