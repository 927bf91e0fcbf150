-- Why a sheet was refused whose level page is kept nevertheless, because nothing was missing but a scale: a person can show
-- the ticks of its bar. Empty for readings that were not refused.
alter table sheet_first_readings add column refused varchar(2000);
