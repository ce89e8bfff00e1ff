-- why the same e-stop was pressed again; empty when another one was
alter table cell_day_tests add column station_reason varchar(200) default '' not null;
