-- attendance of one course among years of others
create index bookings_course_ix on bookings (course_id, starts_at);
