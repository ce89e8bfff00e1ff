-- words of a step, and who took it, may be taken out with the story of its incident, in the transaction that says so
drop trigger incident_steps_immutable;

create trigger incident_steps_reworded_only before update, delete on incident_steps
    for each row call 'org.standclear.platform.database.RewordedOnly';
