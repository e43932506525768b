-- AlterTable
ALTER TABLE "Group" ADD COLUMN     "foodsVersion" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "labelStyle" TEXT COLLATE "C" NOT NULL DEFAULT 'eu';

-- AlterTable
ALTER TABLE "Member" ADD COLUMN     "allergens" TEXT COLLATE "C" NOT NULL DEFAULT '[]',
ADD COLUMN     "coachMaySetTargets" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "vulnerable" TEXT COLLATE "C" NOT NULL DEFAULT '[]';

-- CreateTable
CREATE TABLE "Food" (
    "id" TEXT COLLATE "C" NOT NULL,
    "groupId" TEXT COLLATE "C" NOT NULL,
    "nameFold" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "document" TEXT COLLATE "C" NOT NULL,
    "causeId" TEXT COLLATE "C" NOT NULL,
    "putById" TEXT COLLATE "C",
    "putAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Food_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Target" (
    "id" TEXT COLLATE "C" NOT NULL,
    "memberId" TEXT COLLATE "C" NOT NULL,
    "causeId" TEXT COLLATE "C" NOT NULL,
    "from" TEXT COLLATE "C" NOT NULL,
    "weekdays" TEXT COLLATE "C" NOT NULL,
    "figures" TEXT COLLATE "C" NOT NULL,
    "setById" TEXT COLLATE "C",
    "setAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Target_pkey" PRIMARY KEY ("id")
);

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

-- AddForeignKey
ALTER TABLE "Food" ADD CONSTRAINT "Food_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Food" ADD CONSTRAINT "Food_putById_fkey" FOREIGN KEY ("putById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Target" ADD CONSTRAINT "Target_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Target" ADD CONSTRAINT "Target_setById_fkey" FOREIGN KEY ("setById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;
