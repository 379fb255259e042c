-- A database as the first form of it was written: one build, three entries.
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
INSERT INTO builds VALUES ('11111111-1111-4111-8111-111111111111', 'Old wheel', 'demo', 'mine', 'tommybar: 1', 'tommybar: 1', 0.9, '{"web": 5.0}', 'rack', '2025-11-02T18:00:00.000+00:00', '0.0');
INSERT INTO entries (id, build, device, kind, key, at, by, said) VALUES
    ('21111111-1111-4111-8111-111111111111', '11111111-1111-4111-8111-111111111111', 'phone', 'tick', 'wheel/1/1', '2025-11-02T18:10:00.000+00:00', 'R', '{}'),
    ('31111111-1111-4111-8111-111111111111', '11111111-1111-4111-8111-111111111111', 'phone', 'size', 'wheel.bore', '2025-11-02T18:20:00.000+00:00', 'R', '{"instrument": "plug", "value": 10.012}'),
    ('41111111-1111-4111-8111-111111111111', '11111111-1111-4111-8111-111111111111', 'phone', 'skip', 'wheel/1/10', '2025-11-02T18:30:00.000+00:00', 'R', '{"reason": "no cutter"}');
PRAGMA user_version = 1;
