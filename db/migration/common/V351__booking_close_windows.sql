-- a window that ends without a plan: who closed it, when and why; its requests stay, so that it can be opened again
alter table booking_windows add column closed_by uuid;
alter table booking_windows add column closed_at timestamp with time zone;
alter table booking_windows add column closed_reason varchar(200);
alter table booking_windows add constraint booking_windows_closed_ck check (
    (closed_by is null) = (closed_at is null) and (closed_by is null) = (closed_reason is null)
    and (closed_at is null or accepted_at is null));
