-- CreateTable
CREATE TABLE "Group" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "coachRoleId" TEXT,
    "reminderChannelId" TEXT,
    "zone" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "Member" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "stockVersion" INTEGER NOT NULL DEFAULT 0,
    "planVersion" INTEGER NOT NULL DEFAULT 0,
    "replanAt" DATETIME,
    "zone" TEXT NOT NULL,
    "zoneIsOwn" BOOLEAN NOT NULL DEFAULT false,
    "morning" TEXT NOT NULL,
    "evening" TEXT NOT NULL,
    "quietFrom" TEXT NOT NULL,
    "quietUntil" TEXT NOT NULL,
    "pausedUntil" DATETIME,
    "deliverTo" TEXT NOT NULL,
    "directClosedAt" DATETIME,
    CONSTRAINT "Member_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Recipe" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "titleFold" TEXT NOT NULL,
    "searchFold" TEXT NOT NULL,
    "portions" REAL NOT NULL,
    "tags" TEXT NOT NULL,
    "withdrawnAt" DATETIME,
    CONSTRAINT "Recipe_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Revision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "recipeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "causeId" TEXT NOT NULL,
    "publishedById" TEXT,
    "publishedAt" DATETIME NOT NULL,
    "document" TEXT NOT NULL,
    "sourceText" TEXT NOT NULL,
    CONSTRAINT "Revision_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Revision_publishedById_fkey" FOREIGN KEY ("publishedById") REFERENCES "Member" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Batch" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "portionWord" TEXT NOT NULL,
    "portionsCooked" INTEGER NOT NULL,
    "cookedAt" DATETIME NOT NULL,
    "cookedOn" TEXT NOT NULL,
    "cookedWeightG" REAL,
    "portionG" REAL NOT NULL,
    "keeping" TEXT NOT NULL,
    "perPortion" TEXT NOT NULL,
    CONSTRAINT "Batch_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Batch_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE NO ACTION ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Lot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "batchId" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "portions" INTEGER NOT NULL,
    "since" TEXT NOT NULL,
    "sinceAt" DATETIME NOT NULL,
    "usedDays" INTEGER NOT NULL,
    CONSTRAINT "Lot_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Lot_batchId_memberId_fkey" FOREIGN KEY ("batchId", "memberId") REFERENCES "Batch" ("id", "memberId") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StockChange" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "causeId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    "undoesId" TEXT,
    CONSTRAINT "StockChange_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "StockChange_undoesId_fkey" FOREIGN KEY ("undoesId") REFERENCES "StockChange" ("id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Movement" (
    "changeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "batchId" TEXT NOT NULL,
    "portions" INTEGER NOT NULL,
    "fromLotId" TEXT,
    "toLotId" TEXT,
    "at" DATETIME NOT NULL,
    "on" TEXT NOT NULL,
    "undoes" TEXT,

    PRIMARY KEY ("changeId", "position"),
    CONSTRAINT "Movement_changeId_fkey" FOREIGN KEY ("changeId") REFERENCES "StockChange" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Movement_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Movement_fromLotId_fkey" FOREIGN KEY ("fromLotId") REFERENCES "Lot" ("id") ON DELETE NO ACTION ON UPDATE CASCADE,
    CONSTRAINT "Movement_toLotId_fkey" FOREIGN KEY ("toLotId") REFERENCES "Lot" ("id") ON DELETE NO ACTION ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MealRule" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "weekdays" TEXT NOT NULL,
    "time" TEXT NOT NULL,
    "portions" INTEGER NOT NULL,
    CONSTRAINT "MealRule_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reminder" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "dueAt" DATETIME NOT NULL,
    "helpsUntil" DATETIME NOT NULL,
    "about" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'scheduled',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "nonce" TEXT,
    "claimedBy" TEXT,
    "leaseUntil" DATETIME,
    "messageId" TEXT,
    "deliveredTo" TEXT,
    "settledAt" DATETIME,
    "reason" TEXT,
    CONSTRAINT "Reminder_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "value" TEXT NOT NULL
);

-- CreateIndex
CREATE INDEX "Member_replanAt_idx" ON "Member"("replanAt");

-- CreateIndex
CREATE UNIQUE INDEX "Member_groupId_userId_key" ON "Member"("groupId", "userId");

-- CreateIndex
CREATE UNIQUE INDEX "Recipe_groupId_titleFold_key" ON "Recipe"("groupId", "titleFold");

-- CreateIndex
CREATE UNIQUE INDEX "Revision_causeId_key" ON "Revision"("causeId");

-- CreateIndex
CREATE INDEX "Revision_publishedById_idx" ON "Revision"("publishedById");

-- CreateIndex
CREATE UNIQUE INDEX "Revision_recipeId_number_key" ON "Revision"("recipeId", "number");

-- CreateIndex
CREATE INDEX "Batch_memberId_cookedAt_idx" ON "Batch"("memberId", "cookedAt");

-- CreateIndex
CREATE INDEX "Batch_revisionId_idx" ON "Batch"("revisionId");

-- CreateIndex
CREATE UNIQUE INDEX "Batch_id_memberId_key" ON "Batch"("id", "memberId");

-- CreateIndex
CREATE INDEX "Lot_memberId_portions_idx" ON "Lot"("memberId", "portions");

-- CreateIndex
CREATE INDEX "Lot_batchId_memberId_idx" ON "Lot"("batchId", "memberId");

-- CreateIndex
CREATE UNIQUE INDEX "StockChange_causeId_key" ON "StockChange"("causeId");

-- CreateIndex
CREATE UNIQUE INDEX "StockChange_undoesId_key" ON "StockChange"("undoesId");

-- CreateIndex
CREATE UNIQUE INDEX "StockChange_memberId_version_key" ON "StockChange"("memberId", "version");

-- CreateIndex
CREATE INDEX "Movement_batchId_idx" ON "Movement"("batchId");

-- CreateIndex
CREATE INDEX "Movement_fromLotId_idx" ON "Movement"("fromLotId");

-- CreateIndex
CREATE INDEX "Movement_toLotId_idx" ON "Movement"("toLotId");

-- CreateIndex
CREATE UNIQUE INDEX "MealRule_memberId_position_key" ON "MealRule"("memberId", "position");

-- CreateIndex
CREATE INDEX "Reminder_memberId_state_dueAt_idx" ON "Reminder"("memberId", "state", "dueAt");

-- CreateIndex
CREATE INDEX "Reminder_state_dueAt_idx" ON "Reminder"("state", "dueAt");

-- CreateIndex
CREATE INDEX "Reminder_state_leaseUntil_idx" ON "Reminder"("state", "leaseUntil");

-- CreateIndex
CREATE INDEX "Reminder_nonce_idx" ON "Reminder"("nonce");

-- CreateIndex
CREATE UNIQUE INDEX "Reminder_memberId_key_key" ON "Reminder"("memberId", "key");
