create table incident_medical_views (
    id uuid not null,
    incident_id uuid not null,
    viewed_by uuid not null,
    viewed_at timestamp with time zone not null,
    constraint incident_medical_views_pk primary key (id),
    constraint incident_medical_views_incident_fk foreign key (incident_id) references incidents (id)
);

create index incident_medical_views_incident_ix on incident_medical_views (incident_id, viewed_at);
