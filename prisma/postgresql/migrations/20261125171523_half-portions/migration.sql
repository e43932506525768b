-- What was counted in portions is counted in halves from here on.
ALTER TABLE "Lot" RENAME COLUMN "portions" TO "halves";
UPDATE "Lot" SET "halves" = "halves" * 2;
ALTER INDEX "Lot_memberId_portions_idx" RENAME TO "Lot_memberId_halves_idx";
ALTER TABLE "Movement" RENAME COLUMN "portions" TO "halves";
UPDATE "Movement" SET "halves" = "halves" * 2;
ALTER TABLE "Movement" ADD COLUMN     "reason" TEXT COLLATE "C";
