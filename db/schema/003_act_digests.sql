-- Schema 3: what each act wrote is proven by a digest (BLAKE2b, 256 bits, RFC 7693), and a seal covers all acts in their
-- order, so that a book in which something was changed or lost is told from a sound one. What they cover: act_digests.h.
ALTER TABLE act ADD COLUMN digest BLOB CHECK (length(digest) = 32);
CREATE INDEX piano_act ON piano (act_id);
CREATE INDEX pass_act ON pass (act_id);
CREATE INDEX plan_act ON plan (act_id);
CREATE TABLE seal (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  last_act INTEGER NOT NULL,                              -- the newest act that is covered; 0: none
  chain BLOB NOT NULL CHECK (length(chain) = 32),         -- over the digests in the order of acts
  whole BLOB NOT NULL CHECK (length(whole) = 32),         -- over the chain and the row of the book
  older INTEGER NOT NULL DEFAULT 0,                       -- acts up to this one were given their digest later,
  older_at INTEGER NOT NULL DEFAULT 0                     -- at this time (microseconds since 1970 UTC)
) STRICT;
