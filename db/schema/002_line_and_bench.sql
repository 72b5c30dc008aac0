-- Schema 2: how a line that key heights are read against hangs, as it was said (none: straight), and whether the key
-- frame lay on the bench while the pass was read.
ALTER TABLE pass_version ADD COLUMN line_sag TEXT NOT NULL DEFAULT '';
ALTER TABLE pass_version ADD COLUMN on_bench INTEGER NOT NULL DEFAULT 0 CHECK (on_bench IN (0,1));
