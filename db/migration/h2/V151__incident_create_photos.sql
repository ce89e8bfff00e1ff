create table incident_photos (
    id uuid not null,
    incident_id uuid not null,
    bytes blob not null,
    sha256 varchar(64) not null,
    width_px integer not null,
    height_px integer not null,
    caption varchar(200) not null,
    added_by uuid not null,
    added_at timestamp with time zone not null,
    constraint incident_photos_pk primary key (id),
    constraint incident_photos_incident_fk foreign key (incident_id) references incidents (id),
    constraint incident_photos_sha256_ck check (length(sha256) = 64),
    constraint incident_photos_size_ck check (width_px between 1 and 4000 and height_px between 1 and 4000)
);

create index incident_photos_incident_ix on incident_photos (incident_id, added_at);
