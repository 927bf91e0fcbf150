-- Classes of a school year, and learners who move between them. Runs on H2 in PostgreSQL mode and on PostgreSQL.

-- A class without a year is the list of one class set, pasted when the set was made.
alter table school_classes add column school_year varchar(7);
alter table school_classes add column numbers_shown boolean default false not null;
alter table school_classes add constraint school_classes_by_year_and_name unique (school_year, name);

-- A row is one learner's time in one class. All rows of one learner carry the id of the first of them.
alter table learners add column person_id bigint;
alter table learners add column joined_at timestamp with time zone;
alter table learners add column left_at timestamp with time zone;
update learners set person_id = id, joined_at = (select c.created_at from school_classes c where c.id = class_id);

create index learners_by_person on learners (person_id);
create index learners_by_candidate_number on learners (candidate_number);
create index learners_by_name on learners (name);
create index class_sets_by_class on class_sets (class_id);
