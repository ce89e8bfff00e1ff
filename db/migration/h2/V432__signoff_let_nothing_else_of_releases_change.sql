-- the trigger's class names what may change of a release, and what is written once; every other column never changes
drop trigger signoff_releases_one_way;

create trigger signoff_releases_one_way before update on signoff_releases
    for each row call 'org.standclear.signoff.records.ReleaseGuard';
