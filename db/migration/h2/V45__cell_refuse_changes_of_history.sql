create trigger cell_versions_immutable before update, delete on cell_versions
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger cell_day_tests_immutable before update, delete on cell_day_tests
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger cell_tags_stay before delete on cell_tags
    for each row call 'org.standclear.platform.database.RefuseChange';
