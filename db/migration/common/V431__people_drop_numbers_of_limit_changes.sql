-- nothing asks in which order changes of different courses came any more: they are counted (V398)
alter table course_limit_changes drop constraint course_limit_changes_kept_uq;

alter table course_limit_changes drop column kept_no;
