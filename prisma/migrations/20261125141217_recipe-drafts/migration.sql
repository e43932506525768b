-- CreateTable
CREATE TABLE "Draft" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "takenFor" TEXT NOT NULL,
    "changedAt" DATETIME NOT NULL,
    CONSTRAINT "Draft_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Draft_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- Columns are added, not tables redefined: dropping a table would take what refers to it along.
ALTER TABLE "Group" ADD COLUMN "recipesVersion" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "Revision" ADD COLUMN "takenFor" TEXT NOT NULL DEFAULT '{}';

-- CreateIndex
CREATE INDEX "Draft_memberId_changedAt_idx" ON "Draft"("memberId", "changedAt");

-- CreateIndex
CREATE INDEX "Draft_groupId_idx" ON "Draft"("groupId");
