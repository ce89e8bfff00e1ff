create trigger report_exception_readings_immutable before update, delete on report_exception_readings
    for each row call 'org.standclear.platform.database.RefuseChange';
