-- CreateTable
CREATE TABLE "Group" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "coachRoleId" TEXT COLLATE "C",
    "reminderChannelId" TEXT COLLATE "C",
    "zone" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Group_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Member" (
    "id" TEXT COLLATE "C" NOT NULL,
    "groupId" TEXT COLLATE "C" NOT NULL,
    "userId" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "stockVersion" INTEGER NOT NULL DEFAULT 0,
    "planVersion" INTEGER NOT NULL DEFAULT 0,
    "replanAt" TIMESTAMP(3),
    "zone" TEXT COLLATE "C" NOT NULL,
    "zoneIsOwn" BOOLEAN NOT NULL DEFAULT false,
    "morning" TEXT COLLATE "C" NOT NULL,
    "evening" TEXT COLLATE "C" NOT NULL,
    "quietFrom" TEXT COLLATE "C" NOT NULL,
    "quietUntil" TEXT COLLATE "C" NOT NULL,
    "pausedUntil" TIMESTAMP(3),
    "deliverTo" TEXT COLLATE "C" NOT NULL,
    "directClosedAt" TIMESTAMP(3),

    CONSTRAINT "Member_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Recipe" (
    "id" TEXT COLLATE "C" NOT NULL,
    "groupId" TEXT COLLATE "C" NOT NULL,
    "title" TEXT COLLATE "C" NOT NULL,
    "titleFold" TEXT COLLATE "C" NOT NULL,
    "searchFold" TEXT COLLATE "C" NOT NULL,
    "portions" DOUBLE PRECISION NOT NULL,
    "tags" TEXT COLLATE "C" NOT NULL,
    "withdrawnAt" TIMESTAMP(3),

    CONSTRAINT "Recipe_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Revision" (
    "id" TEXT COLLATE "C" NOT NULL,
    "recipeId" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "causeId" TEXT COLLATE "C" NOT NULL,
    "publishedById" TEXT COLLATE "C",
    "publishedAt" TIMESTAMP(3) NOT NULL,
    "document" TEXT COLLATE "C" NOT NULL,
    "sourceText" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Revision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Batch" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "revisionId" TEXT COLLATE "C" NOT NULL,
    "title" TEXT COLLATE "C" NOT NULL,
    "portionWord" TEXT COLLATE "C" NOT NULL,
    "portionsCooked" INTEGER NOT NULL,
    "cookedAt" TIMESTAMP(3) NOT NULL,
    "cookedOn" TEXT COLLATE "C" NOT NULL,
    "cookedWeightG" DOUBLE PRECISION,
    "portionG" DOUBLE PRECISION NOT NULL,
    "keeping" TEXT COLLATE "C" NOT NULL,
    "perPortion" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Batch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Lot" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "batchId" TEXT COLLATE "C" NOT NULL,
    "place" TEXT COLLATE "C" NOT NULL,
    "portions" INTEGER NOT NULL,
    "since" TEXT COLLATE "C" NOT NULL,
    "sinceAt" TIMESTAMP(3) NOT NULL,
    "usedDays" INTEGER NOT NULL,

    CONSTRAINT "Lot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockChange" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "version" INTEGER NOT NULL,
    "causeId" TEXT COLLATE "C" NOT NULL,
    "recordedAt" TIMESTAMP(3) NOT NULL,
    "undoesId" TEXT COLLATE "C",

    CONSTRAINT "StockChange_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Movement" (
    "changeId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "batchId" TEXT COLLATE "C" NOT NULL,
    "portions" INTEGER NOT NULL,
    "fromLotId" TEXT COLLATE "C",
    "toLotId" TEXT COLLATE "C",
    "at" TIMESTAMP(3) NOT NULL,
    "on" TEXT COLLATE "C" NOT NULL,
    "undoes" TEXT COLLATE "C",

    CONSTRAINT "Movement_pkey" PRIMARY KEY ("changeId","position")
);

-- CreateTable
CREATE TABLE "MealRule" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "weekdays" TEXT COLLATE "C" NOT NULL,
    "time" TEXT COLLATE "C" NOT NULL,
    "portions" INTEGER NOT NULL,

    CONSTRAINT "MealRule_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reminder" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "key" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "dueAt" TIMESTAMP(3) NOT NULL,
    "helpsUntil" TIMESTAMP(3) NOT NULL,
    "about" TEXT COLLATE "C" NOT NULL,
    "state" TEXT COLLATE "C" NOT NULL DEFAULT 'scheduled',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "nonce" TEXT COLLATE "C",
    "claimedBy" TEXT COLLATE "C",
    "leaseUntil" TIMESTAMP(3),
    "messageId" TEXT COLLATE "C",
    "deliveredTo" TEXT COLLATE "C",
    "settledAt" TIMESTAMP(3),
    "reason" TEXT COLLATE "C",

    CONSTRAINT "Reminder_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT COLLATE "C" NOT NULL,
    "value" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Setting_pkey" PRIMARY KEY ("key")
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

-- AddForeignKey
ALTER TABLE "Member" ADD CONSTRAINT "Member_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Recipe" ADD CONSTRAINT "Recipe_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Revision" ADD CONSTRAINT "Revision_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Revision" ADD CONSTRAINT "Revision_publishedById_fkey" FOREIGN KEY ("publishedById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Batch" ADD CONSTRAINT "Batch_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Batch" ADD CONSTRAINT "Batch_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE NO ACTION ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_batchId_memberId_fkey" FOREIGN KEY ("batchId", "memberId") REFERENCES "Batch"("id", "memberId") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockChange" ADD CONSTRAINT "StockChange_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockChange" ADD CONSTRAINT "StockChange_undoesId_fkey" FOREIGN KEY ("undoesId") REFERENCES "StockChange"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_changeId_fkey" FOREIGN KEY ("changeId") REFERENCES "StockChange"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_fromLotId_fkey" FOREIGN KEY ("fromLotId") REFERENCES "Lot"("id") ON DELETE NO ACTION ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Movement" ADD CONSTRAINT "Movement_toLotId_fkey" FOREIGN KEY ("toLotId") REFERENCES "Lot"("id") ON DELETE NO ACTION ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MealRule" ADD CONSTRAINT "MealRule_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reminder" ADD CONSTRAINT "Reminder_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;
