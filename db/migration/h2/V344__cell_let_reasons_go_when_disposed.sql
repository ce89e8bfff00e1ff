-- a tag is hung once and lifted once; its reasons may be taken out at the end of their time, in the transaction that says so
create trigger cell_tags_words_out_only before update on cell_tags
    for each row call 'org.standclear.cell.TagReasonsOutOnly';
