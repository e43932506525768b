-- Columns are renamed and added, no table redefined: dropping one would take what refers to it along.
-- What was counted in portions is counted in halves from here on.
DROP INDEX "Lot_memberId_portions_idx";
DROP INDEX "Lot_batchId_memberId_idx";
ALTER TABLE "Lot" RENAME COLUMN "portions" TO "halves";
UPDATE "Lot" SET "halves" = "halves" * 2;
CREATE INDEX "Lot_memberId_halves_idx" ON "Lot"("memberId", "halves");
CREATE INDEX "Lot_batchId_memberId_idx" ON "Lot"("batchId", "memberId");
ALTER TABLE "Movement" RENAME COLUMN "portions" TO "halves";
UPDATE "Movement" SET "halves" = "halves" * 2;
ALTER TABLE "Movement" ADD COLUMN "reason" TEXT;
