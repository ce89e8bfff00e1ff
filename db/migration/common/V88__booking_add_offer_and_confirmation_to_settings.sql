alter table booking_settings add column offer_minutes integer default 10 not null;

-- 0: nobody is asked to confirm
alter table booking_settings add column confirm_minutes integer default 0 not null;

alter table booking_settings add constraint booking_settings_offer_ck check (offer_minutes between 3 and 240);

alter table booking_settings add constraint booking_settings_confirm_ck check (confirm_minutes between 0 and 2880);
