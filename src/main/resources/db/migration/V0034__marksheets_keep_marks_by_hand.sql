-- Marks of a sheet that was marked on paper, because it could not be read: empty where nothing but a standing was said.
-- Runs on H2 in PostgreSQL mode and on PostgreSQL.
alter table mark_sheet_standings add column awarded numeric(8, 2);
alter table mark_sheet_standings add column available numeric(8, 2);
