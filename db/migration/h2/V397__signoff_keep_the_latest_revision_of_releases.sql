-- the revision that was the latest when a release was issued decides a lapse: the guard keeps it too, from here on
drop trigger signoff_releases_one_way;

create trigger signoff_releases_one_way before update on signoff_releases
    for each row call 'org.standclear.signoff.records.ReleaseGuard';
