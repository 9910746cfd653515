-- Patterns that went out: each is a moment of a mitt with a number, a name and
-- a date. The record is what it printed, so that it can be told what changed
-- since even where a later program words or works out things otherwise.
CREATE TABLE version (
    id       INTEGER PRIMARY KEY,
    mitt     INTEGER NOT NULL REFERENCES mitt (id),
    number   INTEGER NOT NULL CHECK (number > 0),
    at       TEXT    NOT NULL,
    revision INTEGER NOT NULL CHECK (revision > 0),
    name     TEXT    NOT NULL,
    record   TEXT    NOT NULL CHECK (json_valid(record)),
    UNIQUE (mitt, number)
) STRICT;

CREATE TRIGGER version_is_not_changed BEFORE UPDATE ON version
BEGIN
    SELECT RAISE(ABORT, 'a version is not changed: add another');
END;

CREATE TRIGGER version_is_not_deleted BEFORE DELETE ON version
BEGIN
    SELECT RAISE(ABORT, 'a version is not deleted');
END;

-- A number that follows the greatest is not there yet; that also stops INSERT
-- OR REPLACE by number.
CREATE TRIGGER version_is_next BEFORE INSERT ON version
WHEN NEW.number IS NOT 1 + coalesce((SELECT max(number) FROM version WHERE mitt = NEW.mitt), 0)
BEGIN
    SELECT RAISE(ABORT, 'a version must follow the newest one');
END;

CREATE TRIGGER version_is_not_replaced BEFORE INSERT ON version
WHEN EXISTS (SELECT 1 FROM version WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a version is not replaced');
END;
