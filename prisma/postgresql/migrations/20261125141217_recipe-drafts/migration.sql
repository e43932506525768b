-- AlterTable
ALTER TABLE "Group" ADD COLUMN     "recipesVersion" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Revision" ADD COLUMN     "takenFor" TEXT COLLATE "C" NOT NULL DEFAULT '{}';

-- CreateTable
CREATE TABLE "Draft" (
    "id" TEXT COLLATE "C" NOT NULL,
    "groupId" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "title" TEXT COLLATE "C" NOT NULL,
    "text" TEXT COLLATE "C" NOT NULL,
    "takenFor" TEXT COLLATE "C" NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Draft_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Draft_memberId_changedAt_idx" ON "Draft"("memberId", "changedAt");

-- CreateIndex
CREATE INDEX "Draft_groupId_idx" ON "Draft"("groupId");

-- AddForeignKey
ALTER TABLE "Draft" ADD CONSTRAINT "Draft_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Draft" ADD CONSTRAINT "Draft_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;
