package org.standclear.testing.browser;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * A page as the browser prints it on A4, with the colours it would print when asked to keep them.
 *
 * @param sheets what can be read on each side of paper, spaces and line ends as one space
 * @param outside letters that stand beyond the sheet or in the edge that office printers leave white
 * @param darkest mean brightness of the darkest sheet, 0 black to 1 white
 */
public record PrintedPage(List<String> sheets, List<String> outside, double darkest) {

    /** ISO 216 A4: 210 by 297 mm, in inches as the browser asks and in points of 1/72 inch as the file says. */
    private static final double WIDTH_INCHES = 210 / 25.4;

    private static final double HEIGHT_INCHES = 297 / 25.4;
    private static final double POINTS = 72;

    /** What office printers leave white at the edges, from memory: 5 mm. */
    private static final double UNPRINTED = 14;

    private static final float DOTS_PER_INCH = 36;

    /** Prints what the browser shows now. */
    public static PrintedPage of(Browser browser) throws IOException {
        Object pdf = browser.driver()
                .executeCdpCommand(
                        "Page.printToPDF",
                        Map.of(
                                "preferCSSPageSize",
                                true,
                                "printBackground",
                                true,
                                "paperWidth",
                                WIDTH_INCHES,
                                "paperHeight",
                                HEIGHT_INCHES))
                .get("data");
        List<String> sheets = new ArrayList<>();
        List<String> outside = new ArrayList<>();
        double darkest = 1;
        try (var document = Loader.loadPDF(Base64.getDecoder().decode(String.valueOf(pdf)))) {
            var renderer = new PDFRenderer(document);
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                var letters = new Letters(outside);
                letters.setStartPage(page);
                letters.setEndPage(page);
                sheets.add(letters.getText(document).replaceAll("\\s+", " "));
                darkest = Math.min(darkest, brightness(renderer.renderImageWithDPI(page - 1, DOTS_PER_INCH)));
            }
        }
        return new PrintedPage(sheets, outside, darkest);
    }

    /** Everything that can be read, sheet after sheet. */
    public String text() {
        return String.join(" ", sheets);
    }

    private static double brightness(BufferedImage sheet) {
        double sum = 0;
        for (int y = 0; y < sheet.getHeight(); y++) {
            for (int x = 0; x < sheet.getWidth(); x++) {
                int colour = sheet.getRGB(x, y);
                sum += ((colour >> 16 & 0xFF) + (colour >> 8 & 0xFF) + (colour & 0xFF)) / (3 * 255.0);
            }
        }
        return sum / ((double) sheet.getWidth() * sheet.getHeight());
    }

    /** Notes each letter that stands where no printer reaches. */
    private static final class Letters extends PDFTextStripper {

        private final List<String> outside;

        Letters(List<String> outside) {
            this.outside = outside;
        }

        @Override
        protected void processTextPosition(TextPosition letter) {
            double right = letter.getXDirAdj() + letter.getWidthDirAdj();
            boolean reached = letter.getXDirAdj() > UNPRINTED
                    && right < WIDTH_INCHES * POINTS - UNPRINTED
                    && letter.getYDirAdj() > UNPRINTED
                    && letter.getYDirAdj() < HEIGHT_INCHES * POINTS - UNPRINTED;
            if (!reached && !letter.getUnicode().isBlank()) {
                outside.add(letter.getUnicode() + " at " + letter.getXDirAdj() + ", " + letter.getYDirAdj());
            }
            super.processTextPosition(letter);
        }
    }
}
