-- Builds, and the journal of each.
CREATE TABLE builds (
    id TEXT PRIMARY KEY NOT NULL,
    title TEXT NOT NULL,
    design_name TEXT NOT NULL,
    shop_name TEXT NOT NULL,
    design_text TEXT NOT NULL,
    shop_text TEXT NOT NULL,
    scale REAL,
    pins TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(pins)),
    stock TEXT NOT NULL DEFAULT 'ask' CHECK (stock IN ('rack', 'buy', 'ask')),
    begun TEXT NOT NULL,
    program TEXT NOT NULL
) STRICT;

CREATE TABLE entries (
    position INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    build TEXT NOT NULL REFERENCES builds (id),
    device TEXT NOT NULL,
    kind TEXT NOT NULL,
    key TEXT NOT NULL,
    at TEXT NOT NULL,
    by TEXT NOT NULL DEFAULT '',
    said TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(said))
) STRICT;
