create trigger retention_waits_immutable before update or delete on retention_waits
    for each row execute function retention_refuse_change();
