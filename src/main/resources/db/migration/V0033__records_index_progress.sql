-- How far each set has come is counted from an index alone; the rows of sheets carry whole assessments. Runs on H2 in PostgreSQL mode
-- and on PostgreSQL.

-- Whether there are warnings: their text is too long for an index.
alter table sheets add column warned boolean default false not null;
update sheets set warned = true where warnings <> '';

create index sheets_by_progress on sheets (class_set_id, state, undecided, checked_at, warned);
