-- A stroke carries a key of the page that drew it, so that one whose answer
-- was lost can be sent again without standing twice.
ALTER TABLE stroke ADD COLUMN key TEXT;
CREATE UNIQUE INDEX stroke_key ON stroke (mitt, key) WHERE key IS NOT NULL;

-- Moments of a mitt that a person gave a name, to look at and bring back. The
-- newest name of a revision stands; an empty one takes it away.
CREATE TABLE moment (
    id       INTEGER PRIMARY KEY,
    mitt     INTEGER NOT NULL REFERENCES mitt (id),
    revision INTEGER NOT NULL CHECK (revision > 0),
    at       TEXT    NOT NULL,
    name     TEXT    NOT NULL
) STRICT;
CREATE INDEX moment_mitt ON moment (mitt, revision, id);

-- The person's own motifs: cells to stamp on any chart. One that was taken
-- off the list is kept, and named in the second table.
CREATE TABLE motif (
    id    INTEGER PRIMARY KEY,
    at    TEXT    NOT NULL,
    name  TEXT    NOT NULL,
    cells TEXT    NOT NULL CHECK (json_valid(cells))
) STRICT;
CREATE TABLE motif_removed (
    motif INTEGER PRIMARY KEY REFERENCES motif (id),
    at    TEXT    NOT NULL
) STRICT;

CREATE TRIGGER moment_is_not_changed BEFORE UPDATE ON moment
BEGIN
    SELECT RAISE(ABORT, 'a moment is not changed: name it again');
END;

CREATE TRIGGER moment_is_not_deleted BEFORE DELETE ON moment
BEGIN
    SELECT RAISE(ABORT, 'a moment is not deleted');
END;

CREATE TRIGGER motif_is_not_changed BEFORE UPDATE ON motif
BEGIN
    SELECT RAISE(ABORT, 'a motif is not changed: keep another');
END;

CREATE TRIGGER motif_is_not_deleted BEFORE DELETE ON motif
BEGIN
    SELECT RAISE(ABORT, 'a motif is not deleted');
END;
