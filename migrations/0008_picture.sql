-- Photographs for patterns: JPEG, each by a name that is made of its contents, so that a
-- pattern finds it wherever it is kept. Texts of patterns name them.
CREATE TABLE picture (
    id    INTEGER PRIMARY KEY,
    at    TEXT NOT NULL,
    name  TEXT NOT NULL UNIQUE CHECK (length(name) >= 16),
    photo BLOB NOT NULL
) STRICT;

CREATE TRIGGER picture_is_not_changed BEFORE UPDATE ON picture
BEGIN
    SELECT RAISE(ABORT, 'a picture is not changed');
END;

CREATE TRIGGER picture_is_not_deleted BEFORE DELETE ON picture
BEGIN
    SELECT RAISE(ABORT, 'a picture is not deleted');
END;

CREATE TRIGGER picture_is_not_replaced BEFORE INSERT ON picture
WHEN EXISTS (SELECT 1 FROM picture WHERE id = NEW.id OR name = NEW.name)
BEGIN
    SELECT RAISE(ABORT, 'a picture is not replaced');
END;
