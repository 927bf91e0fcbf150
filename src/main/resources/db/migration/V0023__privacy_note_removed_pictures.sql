-- Pictures of pages are taken away when their time is over or a learner is erased; a blank page stands in their place.
-- Runs on H2 in PostgreSQL mode and on PostgreSQL.

alter table sheets add column pictures_removed_at timestamp with time zone;

-- What is over its time is looked for every day.
create index scan_files_by_received on scan_files (received_at);
create index class_sets_by_created on class_sets (created_at);
create index learners_by_left on learners (left_at);
create index audit_entries_by_done on audit_entries (done_at);
