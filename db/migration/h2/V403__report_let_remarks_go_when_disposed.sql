-- a signed line stays; the remark beside it may be taken out at the end of its time, in the transaction that says so
drop trigger report_exception_readings_immutable;

create trigger report_exception_readings_words_out_only before update, delete on report_exception_readings
    for each row call 'org.standclear.report.records.RemarksOutOnly';
