create trigger signoff_releases_one_way before update on signoff_releases
    for each row call 'org.standclear.signoff.records.ReleaseGuard';
