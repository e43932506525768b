-- CreateTable
CREATE TABLE "MealException" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "memberId" TEXT NOT NULL,
    "mealId" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "batchId" TEXT,
    CONSTRAINT "MealException_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "MealException_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "MealException_batchId_idx" ON "MealException"("batchId");

-- CreateIndex
CREATE INDEX "MealException_date_idx" ON "MealException"("date");

-- CreateIndex
CREATE UNIQUE INDEX "MealException_memberId_mealId_date_key" ON "MealException"("memberId", "mealId", "date");
