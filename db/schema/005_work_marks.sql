-- Schema 5: steps of the order of work that a person ticked by hand: at one note, or (note 0) as a whole; done, or not
-- needed on this piano, with a remark and the seconds it took.
CREATE TABLE work_mark (
  piano_id INTEGER NOT NULL REFERENCES piano, step TEXT NOT NULL CHECK (step <> ''),
  note INTEGER NOT NULL CHECK (note BETWEEN 0 AND 108),
  act_id INTEGER NOT NULL REFERENCES act, replaces INTEGER, origin INTEGER REFERENCES act,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),
  state TEXT NOT NULL CHECK (state IN ('done','not-here')),
  remark TEXT NOT NULL, seconds INTEGER NOT NULL CHECK (seconds BETWEEN 0 AND 36000000),
  PRIMARY KEY (piano_id, step, note, act_id),
  FOREIGN KEY (piano_id, step, note, replaces) REFERENCES work_mark (piano_id, step, note, act_id),
  CHECK (replaces < act_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX work_mark_act ON work_mark (act_id);
