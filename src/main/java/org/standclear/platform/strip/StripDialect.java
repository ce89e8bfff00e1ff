package org.standclear.platform.strip;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.thymeleaf.context.ITemplateContext;
import org.thymeleaf.dialect.AbstractProcessorDialect;
import org.thymeleaf.engine.AttributeName;
import org.thymeleaf.model.IProcessableElementTag;
import org.thymeleaf.processor.IProcessor;
import org.thymeleaf.processor.element.IElementTagStructureHandler;
import org.thymeleaf.standard.processor.AbstractStandardExpressionAttributeTagProcessor;
import org.thymeleaf.templatemode.TemplateMode;

/** What templates say for a strip: {@code <figure class="strip" lab:strip="${a Strip}"></figure>}. */
@Component
public class StripDialect extends AbstractProcessorDialect {

    private static final String PREFIX = "lab";
    private static final int PRECEDENCE = 1000;

    public StripDialect() {
        super("Standclear strips", PREFIX, PRECEDENCE);
    }

    @Override
    public Set<IProcessor> getProcessors(String dialectPrefix) {
        return Set.of(new Drawn(dialectPrefix));
    }

    /** Fills the element with the strip's markup, which is not looked through for anything to evaluate. */
    private static final class Drawn extends AbstractStandardExpressionAttributeTagProcessor {

        Drawn(String prefix) {
            super(TemplateMode.HTML, prefix, "strip", PRECEDENCE, true);
        }

        @Override
        protected void doProcess(
                ITemplateContext context,
                IProcessableElementTag tag,
                AttributeName attributeName,
                String attributeValue,
                @Nullable Object result,
                IElementTagStructureHandler handler) {
            if (!(result instanceof Strip strip)) {
                throw new IllegalArgumentException("not a strip: " + attributeValue);
            }
            String root = context.buildLink("/", null);
            handler.setBody(StripMarkup.of(strip, root.substring(0, root.length() - 1)), false);
        }
    }
}
