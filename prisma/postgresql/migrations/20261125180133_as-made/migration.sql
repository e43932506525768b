-- AlterTable
ALTER TABLE "Batch" ADD COLUMN     "asMade" TEXT COLLATE "C";
