alter table cell_tags drop constraint cell_tags_kind_ck;

alter table cell_tags add constraint cell_tags_kind_ck
    check (kind in ('RESTRICTION', 'TEST', 'HOLD', 'OUT_OF_SERVICE', 'LOCKOUT'));

alter table cells drop constraint cells_state_ck;

alter table cells add constraint cells_state_ck
    check (state in ('IN_SERVICE', 'RESTRICTED', 'UNDER_TEST', 'HELD', 'OUT_OF_SERVICE', 'LOCKED_OUT'));
