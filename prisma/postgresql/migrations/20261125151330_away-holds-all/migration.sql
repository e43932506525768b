-- AlterTable
ALTER TABLE "Member" ADD COLUMN     "pausesSafety" BOOLEAN NOT NULL DEFAULT false;
