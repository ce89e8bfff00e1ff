create trigger retention_disposals_immutable before update, delete on retention_disposals
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger retention_rules_immutable before update, delete on retention_rules
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger retention_items_stay before delete on retention_items
    for each row call 'org.standclear.platform.database.RefuseChange';

create trigger retention_holds_stay before delete on retention_holds
    for each row call 'org.standclear.platform.database.RefuseChange';
