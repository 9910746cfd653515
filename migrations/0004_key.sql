-- The key that a browser on another machine must have seen once. It is made
-- once and kept, so that a phone that knows it need not be told again.
CREATE TABLE access (
    id  INTEGER PRIMARY KEY CHECK (id = 1),
    key TEXT    NOT NULL CHECK (length(key) >= 22)
) STRICT;

CREATE TRIGGER access_is_not_changed BEFORE UPDATE ON access
BEGIN
    SELECT RAISE(ABORT, 'the key is not changed');
END;

CREATE TRIGGER access_is_not_deleted BEFORE DELETE ON access
BEGIN
    SELECT RAISE(ABORT, 'the key is not deleted');
END;
