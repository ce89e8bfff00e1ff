create trigger booking_claims_no_overlap before insert, update on booking_claims
    for each row call 'org.standclear.booking.ClaimOverlap';
