-- Schema 1 of the bench book. Only what a person entered is kept; nothing that can be reckoned from it.
-- No triggers and no views: one that is found in a book proves that something else has written there.
--
-- Who wrote what, and when: a session for each process that writes, an act for each thing a person did.
-- `place` orders acts over books that were merged: never smaller than the clock, always larger than every act the
-- writer could see. `at` is the clock as it stood, microseconds since 1970 UTC.
CREATE TABLE book (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  uuid BLOB NOT NULL CHECK (length(uuid) = 16),
  made_at INTEGER NOT NULL,
  made_by TEXT NOT NULL,
  oldest_reader INTEGER NOT NULL,            -- least schema a program must know to read this book
  merged_place INTEGER NOT NULL DEFAULT 0    -- greatest place of any act when the last merge ended
) STRICT;
CREATE TABLE session (
  id INTEGER PRIMARY KEY,
  uuid BLOB NOT NULL UNIQUE CHECK (length(uuid) = 16),
  started_at INTEGER NOT NULL,
  program TEXT NOT NULL
) STRICT;
CREATE TABLE act (
  id INTEGER PRIMARY KEY,
  session_id INTEGER NOT NULL REFERENCES session,
  seq INTEGER NOT NULL CHECK (seq >= 1),
  place INTEGER NOT NULL,
  at INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('setup','pass','entry','paste','import','survey','override','plan','tick','preference','settle','undo','redo')),
  source TEXT NOT NULL DEFAULT '',
  undoes INTEGER REFERENCES act,
  brought INTEGER NOT NULL DEFAULT 0 CHECK (brought IN (0,1)),   -- came by a merge: not undone from this book
  UNIQUE (session_id, seq),
  CHECK ((kind IN ('undo','redo')) = (undoes IS NOT NULL)),
  CHECK (undoes < id)
) STRICT;
CREATE INDEX act_undoes ON act (undoes) WHERE undoes IS NOT NULL;
-- Dictionary of dimensions, filled on first use: one byte a reading in place of a word.
CREATE TABLE dimension (id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE CHECK (key <> '')) STRICT;

-- Name tags: they never change. What is said of them stands in versions.
CREATE TABLE piano (
  id INTEGER PRIMARY KEY,
  uuid BLOB NOT NULL UNIQUE CHECK (length(uuid) = 16),
  act_id INTEGER NOT NULL REFERENCES act
) STRICT;
CREATE TABLE pass (
  id INTEGER PRIMARY KEY,
  uuid BLOB NOT NULL UNIQUE CHECK (length(uuid) = 16),
  piano_id INTEGER NOT NULL REFERENCES piano,
  act_id INTEGER NOT NULL REFERENCES act,
  started_at INTEGER NOT NULL
) STRICT;
CREATE INDEX pass_piano ON pass (piano_id);
CREATE TABLE plan (
  id INTEGER PRIMARY KEY,
  uuid BLOB NOT NULL UNIQUE CHECK (length(uuid) = 16),
  pass_id INTEGER NOT NULL REFERENCES pass,
  act_id INTEGER NOT NULL REFERENCES act,
  options TEXT NOT NULL CHECK (options <> ''),
  content TEXT NOT NULL CHECK (content <> '')        -- JSON: steps and expected readings, as acted on
) STRICT;
CREATE INDEX plan_pass ON plan (pass_id);

-- Versions. Every table below: key columns, the act that wrote the row, the act of the row it replaces (of the same
-- key), the act that first entered this content where an undo or redo has put it back, and whether it takes back.
-- Current = replaced by none and not withdrawn; two such after a merge are a dispute.
CREATE TABLE setup (
  piano_id INTEGER NOT NULL REFERENCES piano,
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  name TEXT NOT NULL CHECK (name <> ''),
  action TEXT NOT NULL CHECK (action IN ('upright','drop','grand')),
  notes INTEGER NOT NULL CHECK (notes BETWEEN 20 AND 108),
  lowest INTEGER NOT NULL CHECK (lowest BETWEEN 0 AND 127 AND lowest + notes <= 128),   -- MIDI number of note 1
  spec_name TEXT NOT NULL DEFAULT '',
  spec TEXT,                                             -- an own or edited sheet; none: the built-in one of that name
  PRIMARY KEY (piano_id, act_id),
  FOREIGN KEY (piano_id, replaces) REFERENCES setup (piano_id, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX setup_act ON setup (act_id);
CREATE TABLE setup_attribute (
  piano_id INTEGER NOT NULL, act_id INTEGER NOT NULL, position INTEGER NOT NULL,
  name TEXT NOT NULL CHECK (name <> ''), value TEXT NOT NULL,
  PRIMARY KEY (piano_id, act_id, position),
  FOREIGN KEY (piano_id, act_id) REFERENCES setup (piano_id, act_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE pass_version (
  pass_id INTEGER NOT NULL REFERENCES pass,
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  label TEXT NOT NULL,
  temperature INTEGER CHECK (temperature BETWEEN -1000 AND 2000),        -- tenths of a degree Celsius
  humidity INTEGER CHECK (humidity BETWEEN 0 AND 1000),                  -- tenths of a per cent
  stack_in INTEGER NOT NULL DEFAULT 0 CHECK (stack_in IN (0,1)),
  weights_on INTEGER NOT NULL DEFAULT 0 CHECK (weights_on IN (0,1)),
  PRIMARY KEY (pass_id, act_id),
  FOREIGN KEY (pass_id, replaces) REFERENCES pass_version (pass_id, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX pass_version_act ON pass_version (act_id);
CREATE TABLE pass_reference (
  pass_id INTEGER NOT NULL, act_id INTEGER NOT NULL, dimension_id INTEGER NOT NULL REFERENCES dimension,
  reference TEXT NOT NULL CHECK (reference <> ''),
  PRIMARY KEY (pass_id, act_id, dimension_id),
  FOREIGN KEY (pass_id, act_id) REFERENCES pass_version (pass_id, act_id)
) STRICT, WITHOUT ROWID;

-- Readings: lengths in nanometres, masses in milligrams, shares in thousandths of a per cent. A cell (note and
-- dimension) holds trials; within a trial each reading replaces the one it saw.
CREATE TABLE reading (
  pass_id INTEGER NOT NULL REFERENCES pass,
  note INTEGER NOT NULL CHECK (note BETWEEN 1 AND 108),
  dimension_id INTEGER NOT NULL REFERENCES dimension,
  trial INTEGER NOT NULL CHECK (trial BETWEEN 1 AND 99),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  relation TEXT NOT NULL CHECK (relation IN ('=','<','>','..','word','not-fitted')),
  value INTEGER CHECK (value BETWEEN -1000000000000 AND 1000000000000),
  upper INTEGER CHECK (upper BETWEEN -1000000000000 AND 1000000000000),  -- of a go / no-go pair
  word TEXT,
  typed TEXT NOT NULL, unit TEXT NOT NULL DEFAULT '',
  taken INTEGER NOT NULL DEFAULT 0 CHECK (taken IN (0,1)),               -- doubtful, taken as typed on purpose
  reason TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (pass_id, note, dimension_id, trial, act_id),
  FOREIGN KEY (pass_id, note, dimension_id, trial, replaces) REFERENCES reading (pass_id, note, dimension_id, trial, act_id),
  CHECK (replaces < act_id),
  CHECK ((value IS NOT NULL) = (relation IN ('=','<','>','..'))),
  CHECK ((upper IS NOT NULL) = (relation = '..')),
  CHECK ((word IS NOT NULL) = (relation = 'word')),
  CHECK (upper >= value)
) STRICT, WITHOUT ROWID;
CREATE INDEX reading_act ON reading (act_id);

CREATE TABLE aim_override (
  piano_id INTEGER NOT NULL REFERENCES piano,
  note INTEGER NOT NULL CHECK (note BETWEEN 1 AND 108),
  dimension_id INTEGER NOT NULL REFERENCES dimension,
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  low INTEGER, nominal INTEGER NOT NULL, high INTEGER,
  reason TEXT NOT NULL CHECK (reason <> ''), review_on TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (piano_id, note, dimension_id, act_id),
  FOREIGN KEY (piano_id, note, dimension_id, replaces) REFERENCES aim_override (piano_id, note, dimension_id, act_id),
  CHECK (replaces < act_id),
  CHECK (low <= nominal), CHECK (nominal <= high)
) STRICT, WITHOUT ROWID;
CREATE INDEX aim_override_act ON aim_override (act_id);

-- Survey. Note 0 is the piano as a whole.
CREATE TABLE finding (
  piano_id INTEGER NOT NULL REFERENCES piano,
  note INTEGER NOT NULL CHECK (note BETWEEN 0 AND 108),
  part TEXT NOT NULL CHECK (part <> ''), fault TEXT NOT NULL,
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  remedy TEXT NOT NULL DEFAULT '',
  state TEXT NOT NULL CHECK (state IN ('not-looked-at','sound','watch','to-do','mended')),
  amount INTEGER NOT NULL DEFAULT 0,                                     -- nanometres, for felt that was filed away
  remark TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (piano_id, note, part, fault, act_id),
  FOREIGN KEY (piano_id, note, part, fault, replaces) REFERENCES finding (piano_id, note, part, fault, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX finding_act ON finding (act_id);
CREATE TABLE symptom (
  piano_id INTEGER NOT NULL REFERENCES piano,
  symptom TEXT NOT NULL CHECK (symptom <> ''),
  first INTEGER NOT NULL CHECK (first BETWEEN 1 AND 108), last INTEGER NOT NULL CHECK (last BETWEEN first AND 108),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  PRIMARY KEY (piano_id, symptom, first, last, act_id),
  FOREIGN KEY (piano_id, symptom, first, last, replaces) REFERENCES symptom (piano_id, symptom, first, last, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX symptom_act ON symptom (act_id);

-- A plan counts from its first tick or print; undoing that takes it back.
CREATE TABLE plan_version (
  plan_id INTEGER NOT NULL REFERENCES plan,
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  PRIMARY KEY (plan_id, act_id),
  FOREIGN KEY (plan_id, replaces) REFERENCES plan_version (plan_id, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX plan_version_act ON plan_version (act_id);
-- What was done, with or without a plan, after the readings of a pass. Named by the act that first said it and its
-- number there. Amounts in nanometres or millionths of a turn, signed in the sense of the operation; none: set to the aim.
CREATE TABLE done (
  said_in INTEGER NOT NULL REFERENCES act, item INTEGER NOT NULL CHECK (item >= 1),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  pass_id INTEGER NOT NULL REFERENCES pass, plan_id INTEGER REFERENCES plan, step TEXT NOT NULL DEFAULT '',
  operation TEXT NOT NULL CHECK (operation <> ''), amount INTEGER, to_aim INTEGER NOT NULL DEFAULT 0 CHECK (to_aim IN (0,1)),
  aim INTEGER,                                                           -- what it was set to, in millionths of mm or g
  PRIMARY KEY (said_in, item, act_id),
  FOREIGN KEY (said_in, item, replaces) REFERENCES done (said_in, item, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX done_act ON done (act_id);
CREATE INDEX done_pass ON done (pass_id);
CREATE TABLE done_note (
  said_in INTEGER NOT NULL, item INTEGER NOT NULL, act_id INTEGER NOT NULL,
  note INTEGER NOT NULL CHECK (note BETWEEN 1 AND 108),
  touched INTEGER NOT NULL CHECK (touched IN (0,1)), amount INTEGER,     -- amount: where it differs by note
  PRIMARY KEY (said_in, item, act_id, note),
  FOREIGN KEY (said_in, item, act_id) REFERENCES done (said_in, item, act_id)
) STRICT, WITHOUT ROWID;

-- Units, minutes, orders and whatever else a person sets for one piano.
CREATE TABLE preference (
  piano_id INTEGER NOT NULL REFERENCES piano, key TEXT NOT NULL CHECK (key <> ''),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  value TEXT NOT NULL,
  PRIMARY KEY (piano_id, key, act_id),
  FOREIGN KEY (piano_id, key, replaces) REFERENCES preference (piano_id, key, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX preference_act ON preference (act_id);
