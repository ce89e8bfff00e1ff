create trigger labs_open_trail after insert on labs for each row call 'org.standclear.trail.HeadOfNewLab';
