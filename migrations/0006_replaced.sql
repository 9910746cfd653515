-- INSERT OR REPLACE deletes the row that stands under a number without asking
-- the triggers that forbid it. So a number that is there already is refused
-- before it comes to that. (Decisions, strokes and classes' decisions refuse
-- it by the numbers of their revisions.)

CREATE TRIGGER mitt_is_not_replaced BEFORE INSERT ON mitt
WHEN EXISTS (SELECT 1 FROM mitt WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a mitt is not replaced');
END;

CREATE TRIGGER class_is_not_replaced BEFORE INSERT ON class
WHEN EXISTS (SELECT 1 FROM class WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a class is not replaced');
END;

CREATE TRIGGER moment_is_not_replaced BEFORE INSERT ON moment
WHEN EXISTS (SELECT 1 FROM moment WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a moment is not replaced');
END;

CREATE TRIGGER motif_is_not_replaced BEFORE INSERT ON motif
WHEN EXISTS (SELECT 1 FROM motif WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a motif is not replaced');
END;

CREATE TRIGGER try_is_not_replaced BEFORE INSERT ON try
WHEN EXISTS (SELECT 1 FROM try WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a try is not replaced');
END;

CREATE TRIGGER verdict_is_not_replaced BEFORE INSERT ON verdict
WHEN EXISTS (SELECT 1 FROM verdict WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a verdict is not replaced');
END;

CREATE TRIGGER count_is_not_replaced BEFORE INSERT ON count
WHEN EXISTS (SELECT 1 FROM count WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a count is not replaced');
END;
