-- The devices that were let in: each has a secret of its own, of which only
-- the SHA-256 is kept, and a handle by which it is found. (The key of 0004 was
-- the same for all, and lets nobody in any more.)
CREATE TABLE device (
    id     INTEGER PRIMARY KEY,
    at     TEXT    NOT NULL,
    handle TEXT    NOT NULL UNIQUE CHECK (length(handle) >= 22),
    secret BLOB    NOT NULL CHECK (length(secret) = 32),
    name   TEXT    NOT NULL
) STRICT;

-- The names that a person gave a device: the last one stands.
CREATE TABLE device_name (
    id     INTEGER PRIMARY KEY,
    device INTEGER NOT NULL REFERENCES device (id),
    at     TEXT    NOT NULL,
    name   TEXT    NOT NULL
) STRICT;

CREATE INDEX device_name_of ON device_name (device);

-- The days on which a device came.
CREATE TABLE device_day (
    device INTEGER NOT NULL REFERENCES device (id),
    day    TEXT    NOT NULL,
    PRIMARY KEY (device, day)
) STRICT, WITHOUT ROWID;

-- The devices that were let out again.
CREATE TABLE device_out (
    device INTEGER PRIMARY KEY REFERENCES device (id),
    at     TEXT    NOT NULL
) STRICT;

CREATE TRIGGER device_is_not_changed BEFORE UPDATE ON device
BEGIN
    SELECT RAISE(ABORT, 'a device is not changed');
END;

CREATE TRIGGER device_is_not_deleted BEFORE DELETE ON device
BEGIN
    SELECT RAISE(ABORT, 'a device is not deleted');
END;

CREATE TRIGGER device_is_not_replaced BEFORE INSERT ON device
WHEN EXISTS (SELECT 1 FROM device WHERE id = NEW.id OR handle = NEW.handle)
BEGIN
    SELECT RAISE(ABORT, 'a device is not replaced');
END;

CREATE TRIGGER device_name_is_not_changed BEFORE UPDATE ON device_name
BEGIN
    SELECT RAISE(ABORT, 'the name of a device is not changed');
END;

CREATE TRIGGER device_name_is_not_deleted BEFORE DELETE ON device_name
BEGIN
    SELECT RAISE(ABORT, 'the name of a device is not deleted');
END;

CREATE TRIGGER device_name_is_not_replaced BEFORE INSERT ON device_name
WHEN EXISTS (SELECT 1 FROM device_name WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'the name of a device is not replaced');
END;

CREATE TRIGGER device_day_is_not_changed BEFORE UPDATE ON device_day
BEGIN
    SELECT RAISE(ABORT, 'the day of a device is not changed');
END;

CREATE TRIGGER device_day_is_not_deleted BEFORE DELETE ON device_day
BEGIN
    SELECT RAISE(ABORT, 'the day of a device is not deleted');
END;

CREATE TRIGGER device_out_is_not_changed BEFORE UPDATE ON device_out
BEGIN
    SELECT RAISE(ABORT, 'who was let out is not changed');
END;

CREATE TRIGGER device_out_is_not_deleted BEFORE DELETE ON device_out
BEGIN
    SELECT RAISE(ABORT, 'who was let out is not let in by that');
END;

CREATE TRIGGER device_out_is_not_replaced BEFORE INSERT ON device_out
WHEN EXISTS (SELECT 1 FROM device_out WHERE device = NEW.device)
BEGIN
    SELECT RAISE(ABORT, 'who was let out is not replaced');
END;
