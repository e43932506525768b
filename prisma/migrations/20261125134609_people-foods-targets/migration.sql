-- CreateTable
CREATE TABLE "Food" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "nameFold" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "document" TEXT NOT NULL,
    "causeId" TEXT NOT NULL,
    "putById" TEXT,
    "putAt" DATETIME NOT NULL,
    CONSTRAINT "Food_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Food_putById_fkey" FOREIGN KEY ("putById") REFERENCES "Member" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Target" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "causeId" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "weekdays" TEXT NOT NULL,
    "figures" TEXT NOT NULL,
    "setById" TEXT,
    "setAt" DATETIME NOT NULL,
    CONSTRAINT "Target_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Target_setById_fkey" FOREIGN KEY ("setById") REFERENCES "Member" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- Columns are added, not tables redefined: dropping a table would take what refers to it along.
ALTER TABLE "Group" ADD COLUMN "labelStyle" TEXT NOT NULL DEFAULT 'eu';
ALTER TABLE "Group" ADD COLUMN "foodsVersion" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "Member" ADD COLUMN "allergens" TEXT NOT NULL DEFAULT '[]';
ALTER TABLE "Member" ADD COLUMN "vulnerable" TEXT NOT NULL DEFAULT '[]';
ALTER TABLE "Member" ADD COLUMN "coachMaySetTargets" BOOLEAN NOT NULL DEFAULT false;

-- CreateIndex
CREATE UNIQUE INDEX "Food_causeId_key" ON "Food"("causeId");

-- CreateIndex
CREATE INDEX "Food_putById_idx" ON "Food"("putById");

-- CreateIndex
CREATE UNIQUE INDEX "Food_groupId_nameFold_key" ON "Food"("groupId", "nameFold");

-- CreateIndex
CREATE UNIQUE INDEX "Target_causeId_key" ON "Target"("causeId");

-- CreateIndex
CREATE INDEX "Target_memberId_setAt_idx" ON "Target"("memberId", "setAt");

-- CreateIndex
CREATE INDEX "Target_setById_idx" ON "Target"("setById");
