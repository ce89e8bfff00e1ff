package org.standclear.routes;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabOwners;
import org.standclear.platform.lab.LabThings;

/** What one lab of a running application has, and what of it an answer gives away. */
final class OneLab {

    /** The one that the first migration makes. */
    static final LabId FIRST = LabId.of("00000000-0000-7000-8000-000000000001");

    private static final Pattern ID = Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");

    private final LabId lab;
    private final JdbcClient jdbc;
    private final LabOwners owners;
    private final List<LabThings> features;
    private final List<String> names;

    OneLab(ApplicationContext application, LabId lab) {
        this.lab = lab;
        jdbc = application.getBean(JdbcClient.class);
        owners = application.getBean(LabOwners.class);
        features = List.copyOf(application.getBeansOfType(LabThings.class).values());
        names = names();
    }

    /** The ids of its things, by table; people who belong to it and to no other lab. */
    List<UUID> ids(String table) {
        if (table.equals("people")) {
            return jdbc.sql("""
                    select r.person_id from person_roles r where r.lab_id = :lab and r.role <> 'ADMINISTRATOR'
                    and not exists (select 1 from person_roles o where o.person_id = r.person_id
                        and (o.lab_id <> :lab or o.role = 'ADMINISTRATOR'))
                    order by r.person_id""").param("lab", lab.value()).query(UUID.class).list();
        }
        LabThings.Kind kind = features.stream()
                .flatMap(feature -> feature.kinds().stream())
                .filter(one -> one.table().equals(table))
                .findFirst()
                .orElseThrow();
        return jdbc.sql("select t.id from " + table + " t " + kind.join() + " where " + kind.lab() + " = :lab")
                .param("lab", lab.value())
                .query(UUID.class)
                .list();
    }

    private List<String> names() {
        List<String> all = new ArrayList<>();
        for (UUID person : ids("people")) {
            all.add(jdbc.sql("select printed_name from people where id = :id")
                    .param("id", person)
                    .query(String.class)
                    .single());
        }
        Stream.of(
                        "select name from cells where lab_id = :lab",
                        "select title from courses where lab_id = :lab",
                        "select sentence from incidents where lab_id = :lab",
                        "select title from booking_windows where lab_id = :lab",
                        "select a.title from assignments a join courses c on c.id = a.course_id where c.lab_id = :lab",
                        "select name from labs where id = :lab",
                        "select room from labs where id = :lab")
                .forEach(sql -> all.addAll(jdbc.sql(sql)
                        .param("lab", lab.value())
                        .query(String.class)
                        .list()));
        Set<String> ownOfSecond = Set.of("Ines Quarryvale");
        return all.stream()
                .filter(name -> !ownOfSecond.contains(name))
                .distinct()
                .toList();
    }

    /**
     * Every row of its things as text, by table, to see whether anybody has changed anything; without messages, since
     * reminders are written by themselves while one looks.
     */
    Map<String, String> rows() {
        Map<String, String> rows = new TreeMap<>();
        for (LabThings feature : features) {
            for (LabThings.Kind kind : feature.kinds()) {
                if (kind.table().equals("messages")) {
                    continue;
                }
                rows.put(
                        kind.table(),
                        jdbc.sql("select t.* from " + kind.table() + " t " + kind.join() + " where " + kind.lab()
                                        + " = :lab order by t.id")
                                .param("lab", lab.value())
                                .query((row, number) -> text(row))
                                .list()
                                .toString());
            }
        }
        return rows;
    }

    private static String text(ResultSet row) throws SQLException {
        StringBuilder text = new StringBuilder();
        for (int column = 1; column <= row.getMetaData().getColumnCount(); column++) {
            text.append(shown(row, column)).append('|');
        }
        return text.toString();
    }

    /** PostgreSQL's driver writes a number as text in another way once a statement has been asked five times. */
    private static @Nullable String shown(ResultSet row, int column) throws SQLException {
        boolean number = row.getMetaData().getColumnType(column) == Types.DOUBLE;
        return number ? String.valueOf(row.getObject(column)) : row.getString(column);
    }

    /** What of the lab an answer shows: names, and ids that do not belong to the reader's lab. */
    List<String> shown(String where, MockHttpServletResponse answer, LabId reader) throws Exception {
        String body = answer.getContentAsString();
        List<String> faults = new ArrayList<>();
        names.stream()
                .filter(name -> Pattern.compile("(?<![A-Za-z])" + Pattern.quote(name) + "(?![A-Za-z])")
                        .matcher(body)
                        .find())
                .forEach(name -> faults.add(where + " shows \"" + name + "\""));
        Set<UUID> ids = new HashSet<>();
        Matcher id = ID.matcher(body);
        while (id.find()) {
            ids.add(UUID.fromString(id.group()));
        }
        owners.of(ids).forEach((thing, labs) -> {
            if (!labs.contains(reader)) {
                faults.add(where + " shows the id " + thing);
            }
        });
        return faults;
    }
}
