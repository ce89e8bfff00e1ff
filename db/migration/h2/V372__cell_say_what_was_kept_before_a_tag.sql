-- the last test and the last reading of the cell when the tag was hung; only what comes after them counts for a return
alter table cell_tags add column last_test bigint default 0 not null;

alter table cell_tags add column last_reading bigint default 0 not null;

drop trigger cell_tags_words_out_only;

-- what hung before these numbers were kept goes by its time, the only order there is
update cell_tags set
    last_test = (select coalesce(max(t.kept_no), 0) from cell_day_tests t
        where t.cell_id = cell_tags.cell_id and t.tested_at < cell_tags.placed_at),
    last_reading = (select coalesce(max(r.kept_no), 0) from cell_tool_readings r
        where r.cell_id = cell_tags.cell_id and r.read_at < cell_tags.placed_at);

create trigger cell_tags_words_out_only before update on cell_tags
    for each row call 'org.standclear.cell.TagReasonsOutOnly';
