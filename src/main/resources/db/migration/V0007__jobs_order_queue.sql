-- The queue is taken in the order of priority and then of time: the order of turns between classes is a priority.

create index scheduled_tasks_by_priority on scheduled_tasks (priority desc, execution_time asc);
