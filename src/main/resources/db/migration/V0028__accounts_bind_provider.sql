-- Who an account is at the school's own provider. Runs on H2 in PostgreSQL mode and on PostgreSQL.

create table provider_identities (
    issuer varchar(400) not null,
    -- What the provider never gives to anybody else (OpenID Connect Core 1.0, 2: sub, at most 255 letters).
    subject varchar(255) not null,
    account_id bigint not null unique references accounts (id) on delete cascade,
    -- Whether the account was made by signing in there; then its roles follow what the provider says.
    made_there boolean not null,
    bound_at timestamp with time zone not null,
    primary key (issuer, subject)
);
