-- Each device counts its entries, so that a queue sent late falls into its order;
-- and nobody changes or takes away what stands in a journal.
ALTER TABLE entries ADD COLUMN number INTEGER NOT NULL DEFAULT 0;

UPDATE entries SET number = position;

CREATE INDEX entries_of_a_build ON entries (build, position);

CREATE TRIGGER entries_are_not_changed BEFORE UPDATE ON entries
BEGIN
    SELECT RAISE(ABORT, 'an entry of the journal is never changed');
END;

CREATE TRIGGER entries_are_not_taken_away BEFORE DELETE ON entries
BEGIN
    SELECT RAISE(ABORT, 'an entry of the journal is never taken away');
END;
