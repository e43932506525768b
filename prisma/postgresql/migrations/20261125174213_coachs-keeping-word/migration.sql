-- CreateTable
CREATE TABLE "KeepingWord" (
    "id" TEXT COLLATE "C" NOT NULL,
    "revisionId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "causeId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "document" TEXT COLLATE "C" NOT NULL,
    "byId" TEXT COLLATE "C",
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "KeepingWord_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "KeepingWord_causeId_key" ON "KeepingWord"("causeId");

-- CreateIndex
CREATE INDEX "KeepingWord_byId_idx" ON "KeepingWord"("byId");

-- CreateIndex
CREATE UNIQUE INDEX "KeepingWord_revisionId_position_key" ON "KeepingWord"("revisionId", "position");

-- AddForeignKey
ALTER TABLE "KeepingWord" ADD CONSTRAINT "KeepingWord_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "KeepingWord" ADD CONSTRAINT "KeepingWord_byId_fkey" FOREIGN KEY ("byId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;
