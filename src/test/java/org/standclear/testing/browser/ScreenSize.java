package org.standclear.testing.browser;

/** The three screens a page must work on, in CSS pixels. */
public enum ScreenSize {
    PHONE(390, 844, true),
    TABLET(820, 1180, true),
    DESKTOP(1280, 860, false);

    final int width;
    final int height;
    final boolean touch;

    ScreenSize(int width, int height, boolean touch) {
        this.width = width;
        this.height = height;
        this.touch = touch;
    }
}
