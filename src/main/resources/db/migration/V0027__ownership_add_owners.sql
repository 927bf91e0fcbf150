-- Whose each record is. Without an owner it is nobody's: the head of department sees it and hands it over.
-- Runs on H2 in PostgreSQL mode and on PostgreSQL.

alter table drawing_tasks add column owner_id bigint references accounts (id);
alter table school_classes add column owner_id bigint references accounts (id);
alter table class_sets add column owner_id bigint references accounts (id);
alter table mark_sheets add column owner_id bigint references accounts (id);

-- To whom a sample is given; empty for a name that was typed before accounts were.
alter table moderations add column moderator_id bigint references accounts (id);

create index drawing_tasks_by_owner on drawing_tasks (owner_id);
create index school_classes_by_owner on school_classes (owner_id);
create index class_sets_by_owner on class_sets (owner_id, created_at);
create index mark_sheets_by_owner on mark_sheets (owner_id);
create index moderations_by_moderator on moderations (moderator_id);

-- Where there is one teacher only, what is there is that teacher's; but for the demonstration.
update class_sets set owner_id = (select min(r.account_id) from account_roles r where r.role = 'teacher')
where not demonstration and (select count(*) from account_roles r where r.role = 'teacher') = 1;
update school_classes set owner_id = (select min(r.account_id) from account_roles r where r.role = 'teacher')
where (select count(*) from account_roles r where r.role = 'teacher') = 1
  and not exists (select 1 from class_sets s where s.class_id = school_classes.id and s.demonstration);
update drawing_tasks set owner_id = (select min(r.account_id) from account_roles r where r.role = 'teacher')
where (select count(*) from account_roles r where r.role = 'teacher') = 1
  and not exists (select 1 from class_sets s where s.task_id = drawing_tasks.id and s.demonstration);

-- A mark sheet says who made it, a sample who marks it.
update mark_sheets set owner_id =
    (select a.id from accounts a where a.id <> 0 and a.name_key = lower(trim(mark_sheets.created_by)));
update moderations set moderator_id =
    (select a.id from accounts a where a.id <> 0 and a.name_key = lower(trim(moderations.moderator)));
