package org.standclear.report.web;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import jakarta.servlet.http.HttpServletResponse;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/** Prints a template to PDF. Nothing is fetched from anywhere: style and letters lie in the program. */
@Component
class Papers {

    private static final String LETTERS = "fonts/atkinson-hyperlegible-next-";

    private final ITemplateEngine templates;
    private final String style;

    Papers(ITemplateEngine templates) {
        this.templates = templates;
        this.style = text("fonts/paper.css");
    }

    void send(String template, Map<String, Object> model, String name, HttpServletResponse response)
            throws IOException {
        byte[] pdf = print(template, model);
        response.setContentType("application/pdf");
        response.setContentLength(pdf.length);
        response.setHeader("Content-Disposition", "inline; filename=\"" + name + "\"");
        response.getOutputStream().write(pdf);
    }

    byte[] print(String template, Map<String, Object> model) {
        String html = templates
                .process(template, new Context(Locale.ENGLISH, model))
                .replace("</head>", "<style>" + style + "</style></head>");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        letters(builder, "Paper", "latin");
        letters(builder, "Paper Ext", "latin-ext");
        builder.useUriResolver((base, uri) -> null);
        builder.withHtmlContent(html, null);
        builder.toStream(out);
        try {
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static void letters(PdfRendererBuilder builder, String family, String part) {
        builder.useFont(() -> open(LETTERS + part + "-regular.ttf"), family, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> open(LETTERS + part + "-bold.ttf"), family, 700, FontStyle.NORMAL, true);
    }

    private static InputStream open(String path) {
        try {
            return new ClassPathResource(path).getInputStream();
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    private static String text(String path) {
        try (InputStream in = open(path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
