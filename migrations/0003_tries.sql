-- What was seen and felt with a half-knitted mitt on the hand. The record is
-- kept as typed; revision is the plan that was tried on. The key is the page's
-- own, so that a try whose answer was lost can be sent again.
CREATE TABLE try (
    id       INTEGER PRIMARY KEY,
    mitt     INTEGER NOT NULL REFERENCES mitt (id),
    key      TEXT    NOT NULL,
    at       TEXT    NOT NULL,
    revision INTEGER NOT NULL CHECK (revision > 0),
    record   TEXT    NOT NULL CHECK (json_valid(record)),
    photo    BLOB,
    UNIQUE (mitt, key)
) STRICT;

-- What the person made of a try: the corrections that were accepted, and the
-- revision that they led to. A try may be answered again; the newest stands.
CREATE TABLE verdict (
    id       INTEGER PRIMARY KEY,
    try      INTEGER NOT NULL REFERENCES try (id),
    at       TEXT    NOT NULL,
    before   INTEGER NOT NULL CHECK (before > 0),
    revision INTEGER NOT NULL CHECK (revision >= before),
    answer   TEXT    NOT NULL CHECK (json_valid(answer))
) STRICT;
CREATE INDEX verdict_try ON verdict (try, id);

-- The rounds that were counted at the elbow, for each hand of a pair. The last
-- one of a hand is where its work stands; round 0 of no section is its cast-on.
CREATE TABLE count (
    id      INTEGER PRIMARY KEY,
    mitt    INTEGER NOT NULL REFERENCES mitt (id),
    key     TEXT    NOT NULL,
    at      TEXT    NOT NULL,
    side    TEXT    NOT NULL CHECK (side IN ('right', 'left')),
    section TEXT    NOT NULL,
    round   INTEGER NOT NULL CHECK (round >= 0),
    UNIQUE (mitt, key)
) STRICT;
CREATE INDEX count_side ON count (mitt, side, id);

-- Habits that were learned from tries and that the person took off: nothing up
-- to this verdict tells of the zone any more.
CREATE TABLE unlearned (
    id      INTEGER PRIMARY KEY,
    at      TEXT    NOT NULL,
    zone    TEXT    NOT NULL,
    verdict INTEGER NOT NULL REFERENCES verdict (id)
) STRICT;

CREATE TRIGGER try_is_not_changed BEFORE UPDATE ON try
BEGIN
    SELECT RAISE(ABORT, 'a try is not changed: add another');
END;

CREATE TRIGGER try_is_not_deleted BEFORE DELETE ON try
BEGIN
    SELECT RAISE(ABORT, 'a try is not deleted');
END;

CREATE TRIGGER verdict_is_not_changed BEFORE UPDATE ON verdict
BEGIN
    SELECT RAISE(ABORT, 'a verdict is not changed: add another');
END;

CREATE TRIGGER verdict_is_not_deleted BEFORE DELETE ON verdict
BEGIN
    SELECT RAISE(ABORT, 'a verdict is not deleted');
END;

CREATE TRIGGER count_is_not_changed BEFORE UPDATE ON count
BEGIN
    SELECT RAISE(ABORT, 'a count is not changed: add another');
END;

CREATE TRIGGER count_is_not_deleted BEFORE DELETE ON count
BEGIN
    SELECT RAISE(ABORT, 'a count is not deleted');
END;

CREATE TRIGGER unlearned_is_not_changed BEFORE UPDATE ON unlearned
BEGIN
    SELECT RAISE(ABORT, 'what was unlearned is not changed');
END;

CREATE TRIGGER unlearned_is_not_deleted BEFORE DELETE ON unlearned
BEGIN
    SELECT RAISE(ABORT, 'what was unlearned is not deleted');
END;
