create trigger retention_waits_immutable before update, delete on retention_waits
    for each row call 'org.standclear.platform.database.RefuseChange';
