-- who counts on somebody in a window, without reading what everybody asks for
create index booking_turn_requests_partner_ix on booking_turn_requests (window_id, partner_id);
