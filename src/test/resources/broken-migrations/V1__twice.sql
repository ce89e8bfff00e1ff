create table twice (id integer); create table twice (id integer);
