-- Who did what and when. Runs on H2 in PostgreSQL mode and on PostgreSQL.

-- Append-only; no foreign key, because an entry outlives what it speaks of.
create table audit_entries (
    number bigint primary key,
    done_at timestamp(6) with time zone not null,
    person varchar(200) not null,
    act varchar(200) not null,
    subject varchar(400) not null,
    previous_hash varchar(64) not null,
    hash varchar(64) not null
);

-- One row: the last entry, so that one is appended after another and a cut-off end shows.
create table audit_head (
    id integer primary key,
    number bigint not null,
    hash varchar(64) not null
);

insert into audit_head (id, number, hash) values (1, 0, '0000000000000000000000000000000000000000000000000000000000000000');
