-- an authorisation for every cell is one for every cell of its lab
alter table authorisations add column lab_id uuid default '00000000-0000-7000-8000-000000000001' not null;

update authorisations set lab_id = (select c.lab_id from cells c where c.id = authorisations.cell_id)
where exists (select 1 from cells c where c.id = authorisations.cell_id);

alter table authorisations alter column lab_id drop default;

alter table authorisations add constraint authorisations_lab_fk foreign key (lab_id) references labs (id);
