-- AlterTable
ALTER TABLE "Member" ADD COLUMN     "wantsRecipeNews" BOOLEAN NOT NULL DEFAULT true;
