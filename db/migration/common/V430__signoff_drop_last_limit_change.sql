-- changes of course limits are counted instead (V398): of two at once the lesser number may be committed last
alter table signoff_preparations drop column last_limit_change;
