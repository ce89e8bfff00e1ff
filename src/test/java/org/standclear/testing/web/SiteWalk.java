package org.standclear.testing.web;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Element;

/** Follows every link that a person can see, from page to page, a few pages of each kind. */
public final class SiteWalk {

    private static final int PAGES_OF_A_KIND = 2;

    private final WebUser person;
    private final Deque<String> ahead = new ArrayDeque<>();
    private final Map<String, Integer> timesSeen = new HashMap<>();
    private final Map<String, String> pages = new LinkedHashMap<>();
    private final List<String> deadLinks = new ArrayList<>();

    private SiteWalk(WebUser person) {
        this.person = person;
    }

    /** Walks from a page until nothing new is in sight. */
    public static SiteWalk from(String path, WebUser person) {
        SiteWalk walk = new SiteWalk(person);
        walk.look(path, "the start");
        while (!walk.ahead.isEmpty()) {
            walk.open(walk.ahead.remove());
        }
        return walk;
    }

    /** One path for each kind of page met, such as {@code /runs/{id}}. */
    public Map<String, String> pages() {
        return pages;
    }

    /** Links that lead to no page, each with where it stands and what came instead. */
    public List<String> deadLinks() {
        return deadLinks;
    }

    private void look(String path, String seenOn) {
        String kind = kindOf(path);
        if (timesSeen.merge(kind, 1, Integer::sum) <= PAGES_OF_A_KIND) {
            ahead.add(path + "\n" + seenOn);
        }
    }

    private void open(String pathAndWhere) {
        String[] parts = pathAndWhere.split("\n", 2);
        WebPage page = person.follow(person.get(parts[0]));
        if (page.status() != 200) {
            deadLinks.add(parts[0] + " on " + parts[1] + " answers " + page.status());
            return;
        }
        if (!page.html().stripLeading().startsWith("<!DOCTYPE html>")) {
            return;
        }
        pages.putIfAbsent(kindOf(page.path()), page.path());
        for (Element link : page.document().select("a[href]")) {
            String href = link.attr("href");
            if (href.startsWith("/")) {
                look(href.replaceFirst("#.*", ""), page.path());
            }
        }
    }

    /** The path with the ids taken out and without its query. */
    static String kindOf(String path) {
        return path.replaceFirst("[?#].*", "")
                .replaceAll("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", "{id}")
                .replaceAll("/\\d[\\d-]*(?=/|$)", "/{n}");
    }
}
