-- Classes are kept as mitts are: each save is a revision of one document that
-- holds the class and its students, and nothing is overwritten.
CREATE TABLE class (
    id      INTEGER PRIMARY KEY,
    created TEXT    NOT NULL
) STRICT;

CREATE TABLE class_decision (
    class    INTEGER NOT NULL REFERENCES class (id),
    revision INTEGER NOT NULL CHECK (revision > 0),
    at       TEXT    NOT NULL,
    document TEXT    NOT NULL CHECK (json_valid(document)),
    PRIMARY KEY (class, revision)
) STRICT;

CREATE TRIGGER class_is_not_changed BEFORE UPDATE ON class
BEGIN
    SELECT RAISE(ABORT, 'a class is not changed: add a revision');
END;

CREATE TRIGGER class_is_not_deleted BEFORE DELETE ON class
BEGIN
    SELECT RAISE(ABORT, 'a class is not deleted');
END;

CREATE TRIGGER class_decision_is_not_changed BEFORE UPDATE ON class_decision
BEGIN
    SELECT RAISE(ABORT, 'a class decision is not changed: add a revision');
END;

CREATE TRIGGER class_decision_is_not_deleted BEFORE DELETE ON class_decision
BEGIN
    SELECT RAISE(ABORT, 'a class decision is not deleted');
END;

CREATE TRIGGER class_decision_is_next BEFORE INSERT ON class_decision
WHEN NEW.revision IS NOT 1 + coalesce((SELECT max(revision) FROM class_decision WHERE class = NEW.class), 0)
BEGIN
    SELECT RAISE(ABORT, 'a class revision must follow the newest one');
END;
