-- CreateTable
CREATE TABLE "MealException" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "mealId" TEXT COLLATE "C" NOT NULL,
    "date" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "batchId" TEXT COLLATE "C",

    CONSTRAINT "MealException_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "MealException_batchId_idx" ON "MealException"("batchId");

-- CreateIndex
CREATE INDEX "MealException_date_idx" ON "MealException"("date");

-- CreateIndex
CREATE UNIQUE INDEX "MealException_memberId_mealId_date_key" ON "MealException"("memberId", "mealId", "date");

-- AddForeignKey
ALTER TABLE "MealException" ADD CONSTRAINT "MealException_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MealException" ADD CONSTRAINT "MealException_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch"("id") ON DELETE CASCADE ON UPDATE CASCADE;
