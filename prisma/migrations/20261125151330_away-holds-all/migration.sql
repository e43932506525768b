-- A column is added, not the table redefined: dropping a table would take what refers to it along.
ALTER TABLE "Member" ADD COLUMN "pausesSafety" BOOLEAN NOT NULL DEFAULT false;
