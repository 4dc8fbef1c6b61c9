-- How long before a trap can be closed its keeper wants to be reminded; none for not at all.
ALTER TABLE person ADD COLUMN reminder_minutes INTEGER DEFAULT 90;
ALTER TABLE person ADD COLUMN removed INTEGER NOT NULL DEFAULT 0;
