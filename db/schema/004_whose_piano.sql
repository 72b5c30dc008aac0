-- Schema 4: whose piano it is (by key: maker, serial, year, owner, contact, place, room, worker; archived), what a
-- person wrote of the piano, a pass, a note or a part (remarks, advice that came back, decisions, visits due), and
-- photographs of them.
CREATE TABLE identity (
  piano_id INTEGER NOT NULL REFERENCES piano, key TEXT NOT NULL CHECK (key <> ''),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  value TEXT NOT NULL CHECK (value <> ''),
  PRIMARY KEY (piano_id, key, act_id),
  FOREIGN KEY (piano_id, key, replaces) REFERENCES identity (piano_id, key, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX identity_act ON identity (act_id);
-- Named, as what was done is, by the act that first said it and its number there.
CREATE TABLE remark (
  said_in INTEGER NOT NULL REFERENCES act, item INTEGER NOT NULL CHECK (item >= 1),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  piano_id INTEGER NOT NULL REFERENCES piano, pass_id INTEGER REFERENCES pass,
  note INTEGER NOT NULL CHECK (note BETWEEN 0 AND 108),                  -- 0: not of one note
  part TEXT NOT NULL, fault TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind <> ''),                                 -- remark, advice, decision, visit
  text TEXT NOT NULL CHECK (text <> ''), who TEXT NOT NULL,
  on_day TEXT NOT NULL CHECK (on_day <> ''),                             -- YYYY-MM-DD; of a visit the day it is due
  accepted TEXT NOT NULL DEFAULT '' CHECK (accepted IN ('','yes','no')), -- of advice
  PRIMARY KEY (said_in, item, act_id),
  FOREIGN KEY (said_in, item, replaces) REFERENCES remark (said_in, item, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX remark_act ON remark (act_id);
CREATE INDEX remark_piano ON remark (piano_id);
CREATE INDEX remark_pass ON remark (pass_id) WHERE pass_id IS NOT NULL;
-- Photographs: what they show stands in versions like everything else; the pictures themselves are kept once each, by
-- the SHA-256 of their bytes (hexadecimal), never change, and are read only when looked at.
CREATE TABLE picture (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64),
  kind TEXT NOT NULL CHECK (kind IN ('jpeg','png')),
  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 65535), height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 65535),
  thumb BLOB NOT NULL,                                                   -- a small JPEG of it
  bytes BLOB NOT NULL CHECK (length(bytes) BETWEEN 1 AND 33554432)
) STRICT;
CREATE TABLE photo (
  said_in INTEGER NOT NULL REFERENCES act, item INTEGER NOT NULL CHECK (item >= 1),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  piano_id INTEGER NOT NULL REFERENCES piano, pass_id INTEGER REFERENCES pass,
  note INTEGER NOT NULL CHECK (note BETWEEN 0 AND 108),                  -- 0: not of one note
  part TEXT NOT NULL, fault TEXT NOT NULL,
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  caption TEXT NOT NULL, who TEXT NOT NULL, on_day TEXT NOT NULL CHECK (on_day <> ''),
  PRIMARY KEY (said_in, item, act_id),
  FOREIGN KEY (said_in, item, replaces) REFERENCES photo (said_in, item, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX photo_act ON photo (act_id);
CREATE INDEX photo_piano ON photo (piano_id);
CREATE INDEX photo_pass ON photo (pass_id) WHERE pass_id IS NOT NULL;
