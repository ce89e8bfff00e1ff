-- a hold is lifted once and is otherwise never changed: not what is held, not by which lab, not by whom
create trigger retention_holds_lifted_only before update on retention_holds
    for each row call 'org.standclear.platform.database.LiftedOnly';
