-- a waiver is given once and used once; reasons and remarks may be taken out at the end of their time, in the transaction
-- that says so
create trigger signoff_waivers_words_out_only before update, delete on signoff_waivers
    for each row call 'org.standclear.signoff.records.WaiverReasonsOutOnly';

create trigger signoff_waivers_taken_back_words_out_only before update, delete on signoff_waivers_taken_back
    for each row call 'org.standclear.signoff.records.TakenBackReasonsOutOnly';

drop trigger signoff_paper_cards_immutable;

create trigger signoff_paper_cards_words_out_only before update, delete on signoff_paper_cards
    for each row call 'org.standclear.signoff.records.PaperRemarksOutOnly';
