package org.standclear.testing.browser;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.test.context.BootstrapWith;
import org.springframework.test.context.junit.jupiter.SpringExtension;

/** Lends browsers to test methods, takes them back emptied, and keeps a picture of what a failed test saw. */
final class BrowserExtension implements ExecutionCondition, ParameterResolver, AfterEachCallback {

    private static final Namespace NAMESPACE = Namespace.create(BrowserExtension.class);

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        return decide(Chromium.installed(), "true".equalsIgnoreCase(System.getenv("CI")));
    }

    static ConditionEvaluationResult decide(Optional<Chromium> chromium, boolean required) {
        if (chromium.isPresent()) {
            return ConditionEvaluationResult.enabled("found " + chromium.get().browser());
        }
        if (required) {
            throw new IllegalStateException(
                    "CI=true requires the browser tests, but chromium and chromedriver are not both installed");
        }
        return ConditionEvaluationResult.disabled("chromium and chromedriver are not both installed");
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Browser.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        Browser browser = Idle.take();
        browser.startAt(baseUrl(context));
        lent(context).add(browser);
        return browser;
    }

    @Override
    public void afterEach(ExtensionContext context) {
        List<Browser> lent = lent(context);
        boolean failed = context.getExecutionException().isPresent();
        for (int i = 0; i < lent.size(); i++) {
            if (failed) {
                String test = context.getRequiredTestClass().getSimpleName() + "-"
                        + context.getRequiredTestMethod().getName();
                lent.get(i).keepWhatItSees(test + "-" + (i + 1));
            }
            Idle.giveBack(lent.get(i));
        }
    }

    /** Empty for a test that starts its application by itself and says to the browser where. */
    private static String baseUrl(ExtensionContext context) {
        if (!AnnotatedElementUtils.hasAnnotation(context.getRequiredTestClass(), BootstrapWith.class)) {
            return "";
        }
        String port = SpringExtension.getApplicationContext(context)
                .getEnvironment()
                .getRequiredProperty("local.server.port");
        return "http://localhost:" + port;
    }

    @SuppressWarnings("unchecked")
    private static List<Browser> lent(ExtensionContext context) {
        return (List<Browser>)
                context.getStore(NAMESPACE).computeIfAbsent(context.getUniqueId(), id -> new ArrayList<Browser>());
    }

    /** Browsers nobody uses just now: starting one takes seconds, emptying one does not. */
    private static final class Idle {

        private static final Deque<Browser> WAITING = new ArrayDeque<>();

        static {
            Runtime.getRuntime().addShutdownHook(new Thread(() -> WAITING.forEach(Browser::quit)));
        }

        static Browser take() {
            Browser waiting = WAITING.poll();
            return waiting != null
                    ? waiting
                    : new Browser(Chromium.installed().orElseThrow().start());
        }

        static void giveBack(Browser browser) {
            if (browser.emptied()) {
                WAITING.push(browser);
            } else {
                browser.quit();
            }
        }
    }
}
