-- What the first release had kept (tables V0001 to V0003): everybody and everything in it is invented.
insert into drawing_tasks (id, slug, title, detail, yaml, learner_code, marks_shown, created_at, changed_at)
values (1, 'lookout-eaves', 'Section through the eaves of the lookout', 'eaves-section', '${task}', 'K7QM2P', true,
        timestamp with time zone '2026-09-01 08:00:00+00', timestamp with time zone '2026-09-02 08:00:00+00');
insert into school_classes (id, name, created_at) values (1, '11B', timestamp with time zone '2026-09-01 08:00:00+00');
insert into learners (id, class_id, position, name, candidate_number) values (1, 1, 1, 'Ada Nkosi', '0042');
insert into learners (id, class_id, position, name, candidate_number) values (2, 1, 2, 'Bo Lind', null);
insert into class_sets (id, title, class_id, task_id, task_yaml, demonstration, created_at, released_at)
values (1, 'Eaves, 11B', 1, 1, '${task}', false, timestamp with time zone '2026-09-03 08:00:00+00', null);
insert into scan_files (id, class_set_id, position, file_name, content_hash, size_bytes, state, attempts, received_at)
values (1, 1, 1, 'ada.jpg', '1111111111111111111111111111111111111111111111111111111111111111', 1000, 'done', 1,
        timestamp with time zone '2026-09-03 09:00:00+00');
insert into scan_files (id, class_set_id, position, file_name, content_hash, size_bytes, state, attempts, received_at)
values (2, 1, 2, 'bo.jpg', '${waiting}', 12, 'reading', 1, timestamp with time zone '2026-09-03 09:00:01+00');
insert into sheets (id, class_set_id, scan_file_id, page, learner_id, learner_set_by_hand, state, reason, assessed_at, checked_at)
values (1, 1, 1, 1, 1, true, 'unreadable', 'The sheet is cut off.', timestamp with time zone '2026-09-03 09:01:00+00',
        timestamp with time zone '2026-09-03 09:10:00+00');
insert into sheets (id, class_set_id, scan_file_id, page, learner_id, state, attempts)
values (2, 1, 2, 1, 2, 'reading', 1);
insert into marks (sheet_id, criterion, position, title, verdict, awarded, available, finding, feedback)
values (1, 'rafter-depth', 1, 'Depth of the rafter', 'met', 2, 2, 'none', 'The rafter is as deep as asked.');
insert into mark_changes (sheet_id, criterion, verdict, awarded, reason, changed_by, changed_at)
values (1, 'rafter-depth', 'not-met', 0, 'drawn over the edge', 'A. Teacher', timestamp with time zone '2026-09-03 09:12:00+00');
insert into moderations (id, class_set_id, choice, size_sheets, chance_seed, candidates, left_out, moderator, drawn_by, drawn_at)
values (1, 1, 'random', 1, 7, 1, 0, 'M. Moderator', 'A. Teacher', timestamp with time zone '2026-09-04 08:00:00+00');
insert into moderation_sheets (moderation_id, place, sheet_id, first_total, available) values (1, 1, 1, 0, 2);
alter table drawing_tasks alter column id restart with 100;
alter table school_classes alter column id restart with 100;
alter table learners alter column id restart with 100;
alter table class_sets alter column id restart with 100;
alter table scan_files alter column id restart with 100;
alter table sheets alter column id restart with 100;
alter table moderations alter column id restart with 100;
