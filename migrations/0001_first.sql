-- What a person decided is kept for good, everything else is computed again.
-- So nothing here is a grid, a count or a plan, and nothing is overwritten:
-- both tables only grow, which makes undo, history and a crash in the middle
-- of a save simple questions.

-- Times are UTC with nine decimals and a Z, so that they sort as text.

CREATE TABLE mitt (
    id      INTEGER PRIMARY KEY,
    created TEXT    NOT NULL
) STRICT;

-- The sheet, names and side: small, so each revision holds it whole.
--
-- The primary key is also the way to the newest decision of each mitt: its
-- greatest revision is one step from the end of the key.
CREATE TABLE decision (
    mitt     INTEGER NOT NULL REFERENCES mitt (id),
    revision INTEGER NOT NULL CHECK (revision > 0),
    at       TEXT    NOT NULL,
    document TEXT    NOT NULL CHECK (json_valid(document)),
    PRIMARY KEY (mitt, revision)
) STRICT;

-- One stroke of the chart: the cells that it set, and how to set them back.
-- An undo is a stroke as well; target is the 'do' that it takes back, or that
-- a redo brings again.
--
-- kind and target stand before the long texts, so that walking over them does
-- not read those.
CREATE TABLE stroke (
    mitt     INTEGER NOT NULL REFERENCES mitt (id),
    revision INTEGER NOT NULL CHECK (revision > 0),
    at       TEXT    NOT NULL,
    kind     TEXT    NOT NULL CHECK (kind IN ('do', 'undo', 'redo')),
    target   INTEGER CHECK ((target IS NULL) = (kind = 'do')),
    edits    TEXT    NOT NULL CHECK (json_valid(edits) AND json_type(edits) = 'array'),
    inverse  TEXT    NOT NULL CHECK (json_valid(inverse) AND json_type(inverse) = 'array'),
    PRIMARY KEY (mitt, revision),
    FOREIGN KEY (mitt, target) REFERENCES stroke (mitt, revision)
) STRICT;

-- What all strokes up to a revision come to, so that reading a chart need not
-- start at the first one. Only a cache: deleting it loses nothing.
CREATE TABLE snapshot (
    mitt     INTEGER PRIMARY KEY REFERENCES mitt (id),
    revision INTEGER NOT NULL,
    marks    TEXT    NOT NULL CHECK (json_valid(marks) AND json_type(marks) = 'array')
) STRICT;

-- Append-only is held here and not only in the program, since a file may be
-- opened with other programs too.

CREATE TRIGGER mitt_is_not_changed BEFORE UPDATE ON mitt
BEGIN
    SELECT RAISE(ABORT, 'a mitt is not changed: add a revision');
END;

CREATE TRIGGER mitt_is_not_deleted BEFORE DELETE ON mitt
BEGIN
    SELECT RAISE(ABORT, 'a mitt is not deleted');
END;

CREATE TRIGGER decision_is_not_changed BEFORE UPDATE ON decision
BEGIN
    SELECT RAISE(ABORT, 'a decision is not changed: add a revision');
END;

CREATE TRIGGER decision_is_not_deleted BEFORE DELETE ON decision
BEGIN
    SELECT RAISE(ABORT, 'a decision is not deleted');
END;

CREATE TRIGGER stroke_is_not_changed BEFORE UPDATE ON stroke
BEGIN
    SELECT RAISE(ABORT, 'a stroke is not changed: add a revision');
END;

CREATE TRIGGER stroke_is_not_deleted BEFORE DELETE ON stroke
BEGIN
    SELECT RAISE(ABORT, 'a stroke is not deleted');
END;

-- Decisions and strokes share one numbering, so that "what came after
-- revision 7" has one answer. A number that follows the greatest of both is
-- in neither table yet and leaves no hole. It also stops INSERT OR REPLACE,
-- which deletes without asking the triggers above.

CREATE TRIGGER decision_is_next BEFORE INSERT ON decision
WHEN NEW.revision IS NOT 1 + max(
    coalesce((SELECT max(revision) FROM decision WHERE mitt = NEW.mitt), 0),
    coalesce((SELECT max(revision) FROM stroke WHERE mitt = NEW.mitt), 0))
BEGIN
    SELECT RAISE(ABORT, 'a revision must follow the newest decision or stroke');
END;

CREATE TRIGGER stroke_is_next BEFORE INSERT ON stroke
WHEN NEW.revision IS NOT 1 + max(
    coalesce((SELECT max(revision) FROM decision WHERE mitt = NEW.mitt), 0),
    coalesce((SELECT max(revision) FROM stroke WHERE mitt = NEW.mitt), 0))
BEGIN
    SELECT RAISE(ABORT, 'a revision must follow the newest decision or stroke');
END;

-- A stroke speaks of a chart, which there is only once something is decided.
CREATE TRIGGER stroke_has_a_decision BEFORE INSERT ON stroke
WHEN NOT EXISTS (SELECT 1 FROM decision WHERE mitt = NEW.mitt)
BEGIN
    SELECT RAISE(ABORT, 'a stroke needs a decision before it');
END;

CREATE TRIGGER stroke_target_is_a_do BEFORE INSERT ON stroke
WHEN NEW.target IS NOT NULL
    AND NOT EXISTS (
        SELECT 1 FROM stroke
        WHERE mitt = NEW.mitt AND revision = NEW.target AND kind = 'do')
BEGIN
    SELECT RAISE(ABORT, 'an undo or redo speaks of a stroke that was drawn');
END;
